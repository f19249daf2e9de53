/** The calendar day where this device is, as documents keep it. */
export function localDay(now = new Date()): string {
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
