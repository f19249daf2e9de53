const fractions: Readonly<Record<string, string>> = {
  '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅓': '1/3', '⅔': '2/3',
}

/** How a number may begin a text: groups of three by comma or space, a decimal point, a trade fraction. */
export const NUMBER_PATTERN = String.raw`(?:\d+[ ]+\d+\/\d+|\d+\/\d+|\d{1,3}(?:,\d{3})+(?:\.\d*)?(?![\d,])|\d{1,3}(?:[ ]\d{3})+(?:\.\d*)?(?![\d,])|\d+(?:\.\d*)?|\.\d+)`

/** Spaces made plain, minus signs made one, "2½" and "2-1/2" written "2 1/2". */
export function plainNumberText(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${fractions[sign] ?? ''}`)
    .replace(/[\u00a0\u202f\u2009\t]/g, ' ')
    .replace(/[−–]/g, '-')
    .replace(/(\d)-(\d+\/\d+)/g, '$1 $2')
    .replace(/ +/g, ' ')
    .trim()
}

/** Value of a text that matches NUMBER_PATTERN; undefined for a fraction over zero. */
export function findNumber(text: string): number | undefined {
  const fraction = /^(?:(\d+) +)?(\d+)\/(\d+)$/.exec(text)
  if (fraction) {
    const [, whole = '0', top = '0', bottom = '0'] = fraction
    return Number(bottom) === 0 ? undefined : Number(whole) + Number(top) / Number(bottom)
  }
  const value = Number(text.replace(/[, ]/g, ''))
  return Number.isFinite(value) ? value : undefined
}
