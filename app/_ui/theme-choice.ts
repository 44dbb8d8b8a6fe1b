export type Theme = 'day' | 'night'

/** The theme that the screen shows now. */
export function shownTheme(): Theme {
  return document.documentElement.dataset.theme === 'night' ? 'night' : 'day'
}

/** Show a theme and keep it on this device: day for sun and glare, night for dark shafts. */
export function showTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme
  try {
    localStorage.setItem('theme', theme)
  } catch (cause) {
    if (!(cause instanceof DOMException)) throw cause
  }
}
