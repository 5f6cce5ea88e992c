/** Light or dark: as the system says, or as chosen here. */
export type Theme = 'system' | 'light' | 'dark';

const storageKey = 'mold-layup-workbook.theme';

function isTheme(value: unknown): value is Theme {
  return value === 'system' || value === 'light' || value === 'dark';
}

/** The choice of an earlier visit; storage may be denied, then the system decides. */
export function readTheme(): Theme {
  try {
    const saved = localStorage.getItem(storageKey);
    return isTheme(saved) ? saved : 'system';
  } catch {
    return 'system';
  }
}

/** Shows the theme and keeps it for the next visit where storage allows. */
export function applyTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
  try {
    if (theme === 'system') localStorage.removeItem(storageKey);
    else localStorage.setItem(storageKey, theme);
  } catch {
    // Storage full or denied: the choice holds for this visit only, which harms nothing.
  }
}
