import { useEffect, useState } from 'react';
import type { ViewTheme } from './viewTheme';

const fallback: ViewTheme = { ink: '#1d2733', ground: '#e9e2cd', accent: '#23497f', finding: '#9c2b14' };

function readTheme(): ViewTheme {
  const style = getComputedStyle(document.documentElement);
  const read = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
  return {
    ink: read('--ink', fallback.ink),
    ground: read('--view-ground', fallback.ground),
    accent: read('--blue', fallback.accent),
    finding: read('--oxide', fallback.finding),
  };
}

/** The page's colors as plain values, followed when the theme changes. */
export function useViewTheme(): ViewTheme {
  const [theme, setTheme] = useState(readTheme);
  useEffect(() => {
    const follow = () => setTheme(readTheme());
    const dark = typeof matchMedia === 'function' ? matchMedia('(prefers-color-scheme: dark)') : null;
    const observer = new MutationObserver(follow);
    observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    dark?.addEventListener('change', follow);
    return () => {
      observer.disconnect();
      dark?.removeEventListener('change', follow);
    };
  }, []);
  return theme;
}
