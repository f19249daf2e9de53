const YEAR_S = 31_536_000

/** A choice remembered on this device, where a browser has one. */
export function findChoice(name: string): string | undefined {
  return document.cookie.split('; ').find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1)
}

/** Remembers a choice of the screen on this device for a year; undefined forgets it. */
export function rememberChoice(name: string, value: string | undefined): void {
  document.cookie = `${name}=${value ?? ''}; Path=/; Max-Age=${value === undefined ? 0 : YEAR_S}; SameSite=Lax`
}
