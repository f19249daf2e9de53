/**
 * Days from 1970-01-01 to a day of the Gregorian calendar.
 *
 * @param month 1 to 12
 * @source the calendar's own rule: a year from March on has its leap day last, 400 years have 146,097 days
 */
export function daysFromDay(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146_097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719_468
}

/**
 * The day of the Gregorian calendar, month 1 to 12, so many days from 1970-01-01: `daysFromDay` the other way round.
 *
 * @param days whole
 * @source civil-from-days arithmetic of the proleptic Gregorian calendar (public domain, Howard Hinnant)
 */
export function dayFromDays(days: number): { year: number; month: number; day: number } {
  const z = days + 719_468
  const era = Math.floor(z / 146_097)
  const doe = z - era * 146_097
  const yoe = Math.floor((doe - Math.floor(doe / 1460) + Math.floor(doe / 36_524) - Math.floor(doe / 146_096)) / 365)
  const doy = doe - (365 * yoe + Math.floor(yoe / 4) - Math.floor(yoe / 100))
  const mp = Math.floor((5 * doy + 2) / 153)
  const month = mp + (mp < 10 ? 3 : -9)
  return { year: yoe + era * 400 + (month <= 2 ? 1 : 0), month, day: doy - Math.floor((153 * mp + 2) / 5) + 1 }
}
