/**
 * What a rating bureau asks of hauled water before it counts, as its public page is reproduced in the trade.
 * An estimate is made with these, never a rating: the bureau tests on the ground and decides.
 */
export const creditRules = {
  /** Rating bureau page; trade drill articles (seen). */
  minimum_gpm: 250,
  startWithin_s: 5 * 60,
  duration_s: 2 * 3600,
  /** Rating bureau page, as reproduced (seen). */
  higherWithin_s: 15 * 60,
  /** 250 gpm for 2 h: trade series part 3 citing NFPA 1142-2016; conservation-district page; cistern note (seen-2nd). */
  volume_gal: 30_000,
  /** Rating bureau page (seen). */
  stationWithin_mi: 5,
  suctionWithin_ft: 1000,
  /** Pumps are tested every year: NFPA 1911 (from memory). */
  testedWithin_y: 1,
} as const

/** Steps in which the highest rate is looked for. */
export const RATE_STEP_GPM = 10

export const creditLines = ['start', 'duration', 'higher-rate', 'volume', 'all-year', 'dispatch', 'tested-pumps', 'certificate', 'station', 'suction-point'] as const
export type CreditLineCode = (typeof creditLines)[number]
export type Verdict = 'pass' | 'fail' | 'unknown'

/** One line of the check. */
export type CreditLine = {
  readonly code: CreditLineCode
  readonly verdict: Verdict
  /** When it fails, seconds from dispatch. */
  readonly fails_s?: number
  /** Why, by a code with words. */
  readonly why?: string
  readonly values: Readonly<Record<string, number>>
  readonly subjectIds: readonly string[]
  /** What nobody has entered. */
  readonly missing: readonly { readonly itemId: string; readonly field: string }[]
}

/** A line of the check, with nothing said but its verdict unless `rest` says more. */
export const creditLine = (code: CreditLineCode, verdict: Verdict, rest: Partial<Omit<CreditLine, 'code' | 'verdict'>> = {}): CreditLine =>
  ({ code, verdict, values: {}, subjectIds: [], missing: [], ...rest })
