import type { Point } from '@/lib/geo'
import type { Change } from '@/lib/plan'
import type { SeatRole, SeatView, TenderPoint } from '@/lib/exercise'

/** What a seat is, and what it can name: sites and units by their ids. */
export type SeatInfo = {
  seatId: string
  exercise: string
  role: SeatRole
  siteId?: string
  /** As it stands beside what is decided and written here. */
  by: string
  names: Readonly<Record<string, string>>
  /** What a decision can be about. */
  choices: { tenders: readonly string[]; fills: readonly string[]; dumps: readonly string[]; lays: readonly string[] }
  /** At a dump or fill site: whether something of its own is out of order. */
  isAmiss?: boolean
  /** Only for whoever has the map of where everybody is. */
  map?: { hash?: string; attribution?: string; sites: readonly { id: string; kind: 'fillSite' | 'dumpSite' | 'fireGround' | 'station'; name: string; point: Point }[] }
}

/** What a seat knows at a moment of the exercise. */
export type SeatAnswer = { clock_s: number; view: SeatView; points?: readonly TenderPoint[] }

/**
 * Events of a seat's stream: `begin` says after which number news follow, `seat` who sits here, `news` what came about
 * (with its number as id), `ready` that all so far has been told, `now` what is known at this moment, `beat` the
 * station's time, `gone` that the exercise is not here any more.
 */
export type SeatEventName = 'begin' | 'seat' | 'news' | 'ready' | 'now' | 'beat' | 'gone'

/** What is sent from a seat. The id is made there, so that the same one sent twice counts once. */
export type SeatAct = { kind: 'decide'; id: string; change: Change } | { kind: 'note'; id: string; text: string }

/** Form of the numbers: news told by other rules are numbered anew. */
const NUMBERING = 1
export const idOfNumber = (number: number): string => `${NUMBERING}.${number}`

/** The number in an id of a stream; 0 where it is none of this numbering. */
export function numberOfId(id: string | null | undefined): number {
  const [, numbering, number] = /^(\d{1,4})\.(\d{1,9})$/.exec(id ?? '') ?? []
  return Number(numbering) === NUMBERING ? Number(number) : 0
}
