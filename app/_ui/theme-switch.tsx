'use client'

/** Day for sun and glare, night for dark shafts. Kept on this device only. */
export function ThemeSwitch() {
  const turn = () => {
    const next = document.documentElement.dataset.theme === 'night' ? 'day' : 'night'
    document.documentElement.dataset.theme = next
    try {
      localStorage.setItem('theme', next)
    } catch (cause) {
      if (!(cause instanceof DOMException)) throw cause
    }
  }
  return (
    <button type="button" onClick={turn}>
      Day or night screen
    </button>
  )
}
