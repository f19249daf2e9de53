import { LOCALE } from './format-number'

const toTheMinute = new Intl.DateTimeFormat(LOCALE, { hour: 'numeric', minute: '2-digit' })
const toTheSecond = new Intl.DateTimeFormat(LOCALE, { hour: 'numeric', minute: '2-digit', second: '2-digit' })

/** The time of day of a moment [ms since 1970] where this device is: "2:05 PM", "2:05:30 PM". */
export const formatMoment = (at_ms: number, { hasSeconds = false } = {}): string => (hasSeconds ? toTheSecond : toTheMinute).format(at_ms)
