/** A number that a log measured, for an item of the district or of the plan. */
export type Measure = {
  readonly doc: 'district' | 'plan'
  readonly collection: 'apparatus' | 'fillSites' | 'legNotes'
  /** The item it belongs to; of a way, the tender that drove it. */
  readonly itemId: string
  readonly field: string
  /** Ends of a way. */
  readonly fromId?: string
  readonly toId?: string
  readonly value: number
  readonly count: number
  readonly low: number
  readonly high: number
  /** Half the range it may lie in, as a share of it. */
  readonly spreadShare: number
  /** A point of a pump's own test: at which net pressure. */
  readonly netPressure_psi?: number
  /** Why it is not to be taken; absent: it is. */
  readonly withheld?: Withheld
}

/**
 * `once`: seen a single time. `scattered`: no surer than a guess. `odd`: far from what all took there, so likely waiting or pressed at another
 * moment. `beyond`: more than the site can give.
 */
export type Withheld = 'once' | 'scattered' | 'odd' | 'beyond'
