/** Lights the screen can be set to; without one it follows the device. */
export const themes = ['light', 'dark', 'sun'] as const
export type Theme = (typeof themes)[number]

/** Remembered under this name in a cookie: the server writes it into the page, so that no wrong light flashes first. */
export const THEME_COOKIE = 'millrace-theme'

/** The theme of that name, or undefined for anything else: follow the device. */
export function findTheme(text: string | undefined): Theme | undefined {
  return themes.find((theme) => theme === text)
}
