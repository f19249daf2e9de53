/** Words and digits are English as written in the United States; decimals and groups follow it. */
export const LOCALE = 'en-US'

const formats = new Map<string, Intl.NumberFormat>()

/**
 * A number in digits, grouped by thousands, trailing zeros dropped unless `fixed`.
 *
 * @param decimals most decimals kept, 0 to 10
 * @throws RangeError if the value is not finite: unknown is absent, never a number
 */
export function formatNumber(value: number, decimals = 0, fixed = false): string {
  if (!Number.isFinite(value)) throw new RangeError(`value is ${String(value)}, must be a finite number`)
  const key = `${decimals} ${fixed}`
  let format = formats.get(key)
  if (!format) {
    format = new Intl.NumberFormat(LOCALE, { maximumFractionDigits: decimals, minimumFractionDigits: fixed ? decimals : 0 })
    formats.set(key, format)
  }
  // `-0` and "-0" from rounding both read as 0; a minus sign is wider than a hyphen and does not break off its number.
  const text = format.format(value)
  return /[1-9]/.test(text) ? text.replace('-', '−') : text.replace('-', '')
}

/** A share of one as a percentage: 0.87 is "87%". */
export function formatShare(share: number, decimals = 0): string {
  return `${formatNumber(share * 100, decimals)}%`
}
