import { useState } from 'react';
import { Button } from '../ui/Button';
import { applyTheme, readTheme, type Theme } from './theme';

const nextTheme: Record<Theme, Theme> = { system: 'light', light: 'dark', dark: 'system' };
const words: Record<Theme, string> = { system: 'as the system', light: 'light', dark: 'dark' };

/** Half-filled ring for the system's choice, open ring for light, filled ring for dark. */
function ThemeSign({ theme }: { readonly theme: Theme }) {
  return (
    <svg width="22" height="22" viewBox="0 0 24 24" aria-hidden>
      <circle
        cx="12"
        cy="12"
        r="9"
        fill={theme === 'dark' ? 'currentColor' : 'none'}
        stroke="currentColor"
        strokeWidth="2"
      />
      {theme === 'system' ? <path d="M12 3a9 9 0 010 18z" fill="currentColor" /> : null}
    </svg>
  );
}

/** Steps through light, dark and the system's choice. */
export function ThemeToggle() {
  const [theme, setTheme] = useState(readTheme);
  const next = nextTheme[theme];
  return (
    <Button
      aria-label={`Colors: ${words[theme]}. Change to ${words[next]}.`}
      title={`Colors: ${words[theme]}`}
      onClick={() => {
        applyTheme(next);
        setTheme(next);
      }}
    >
      <ThemeSign theme={theme} />
    </Button>
  );
}
