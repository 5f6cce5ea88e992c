import { useState } from 'react';

export interface Notifications {
  /** The browser can notify, and was not asked yet. */
  readonly canAsk: boolean;
  /** How it stands, a sentence. */
  readonly told: string;
  readonly ask: () => void;
}

const words: Readonly<Record<NotificationPermission, string>> = {
  granted: 'Alarms also show as notifications of the browser.',
  denied: 'This browser does not allow notifications: alarms sound here only, keep the page open.',
  default: 'Alarms sound on this page only.',
};

const permissionNow = (): NotificationPermission =>
  typeof Notification === 'undefined' ? 'denied' : Notification.permission;

/** Whether alarms may show while another window is in front. */
export function useNotifications(): Notifications {
  const [permission, setPermission] = useState(permissionNow);
  return {
    canAsk: permission === 'default',
    told: words[permission],
    ask: () => void Notification.requestPermission().then(setPermission),
  };
}

/** Shows it where that is allowed; some browsers let only a service worker do so, and then the sound must do. */
export function notify(text: string): void {
  if (permissionNow() !== 'granted') return;
  try {
    void new Notification(text);
  } catch {
    // The page still sounds and says it.
  }
}
