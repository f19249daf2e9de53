import type { EditBody } from '../plan'

/** Changes that are looked at, in the order of the chain. */
export type CandidateKind =
  | 'otherDraftSite' | 'secondFillSite' | 'fillPumper' | 'suctionLine' | 'suctionSize' | 'fillLineSize' | 'fillLineCount' | 'fillBay'
  | 'bayOrder' | 'otherRoad' | 'tender' | 'tenderWithTank' | 'portableTank' | 'dumpPosition' | 'driveThrough' | 'dumpPumper' | 'swapPumpers'

/** What the documents do not say and somebody must look at before counting on a change. */
export type Proviso =
  | 'hose-not-listed' | 'suction-not-listed' | 'siphon-not-listed' | 'tank-not-carried' | 'tank-carrier' | 'second-inlet'
  | 'hose-of-other-pumper' | 'room-at-fill' | 'room-at-dump' | 'drive-through-room' | 'handling-measured' | 'soft-ground'
  | 'mutual-aid' | 'way-unmeasured'

/** What a change asks for. Times are to have it in place; for apparatus from dispatch to its place. */
export type Effort = { readonly peopleCount: number; readonly apparatusCount: number; readonly time_s: number }

/** One change of a plan, as edits that can be applied, undone and simulated. It holds nothing but edits of the plan. */
export type Candidate = {
  /** The same for the same change of the same plan, on every device. */
  readonly id: string
  /** Ways to do one thing share a group: only the best of them is listed. */
  readonly group: string
  readonly kind: CandidateKind
  /** What is changed or added first, then where. */
  readonly subjectIds: readonly string[]
  /** For the sentence: numbers keyed by unit-suffixed names. */
  readonly values: Readonly<Record<string, number | string>>
  readonly edits: readonly EditBody[]
  /** Without the drive of what comes; see `effortOfTrial`. */
  readonly effort: Effort
  /** Apparatus that comes with it, and the place it goes to. */
  readonly comes?: { readonly apparatusId: string; readonly toId: string }
  readonly provisos: readonly Proviso[]
}
