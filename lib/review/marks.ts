import { tenderSteps } from '../field-log'
import { tripStages, type TripStage } from '../shuttle'

/** Where a tender gives water and where it takes it. */
export type PlaceKind = 'dump' | 'fill'

/** One of the things that are seen of a tender on a stay. */
export type Mark = (typeof tenderSteps)[PlaceKind][number]

/** Place of a mark in the order of a stay; -1 where it does not belong to one there. */
export const stepOf = (place: PlaceKind, mark: string): number => (tenderSteps[place] as readonly string[]).indexOf(mark)

/** One thing seen of one tender, in seconds after dispatch by one clock. */
export type TenderEvent = {
  readonly id: string
  readonly at_s: number
  readonly place: PlaceKind
  readonly mark: Mark
  readonly siteId?: string | undefined
  /** Water in the tender then, where somebody read it. */
  readonly water_gal?: number | undefined
}

/** Times of a round's stages with nobody in the way. [s] */
export type TripTimes = Readonly<Record<TripStage, number>>

/** Room for what each stage took, time after time: none so far. [s] */
export const noTimes = (): Record<TripStage, number[]> => Object.fromEntries(tripStages.map((stage) => [stage, []])) as unknown as Record<TripStage, number[]>

/**
 * One stay of a tender at a place. A mark has a time once it is seen or taken; what comes after the last that was
 * seen of a tender has none.
 */
export type Stay = {
  place: PlaceKind
  siteId?: string | undefined
  times_s: Partial<Record<Mark, number>>
  /** Marks somebody logged; the others were taken. */
  seen: Set<Mark>
  eventIds: string[]
  /** Water read in the tender at a mark. */
  water_gal: Partial<Record<Mark, number>>
}

/** Where a tender goes from here. */
export const otherPlace = (place: PlaceKind): PlaceKind => (place === 'dump' ? 'fill' : 'dump')

/** The stages of a stay by the mark they lead up to; waiting is none of them, and standing hooked up takes no time of its own. */
export const stageUpTo: Readonly<Record<PlaceKind, Readonly<Partial<Record<Mark, TripStage>>>>> = {
  dump: { dumping: 'dumpPosition', empty: 'dump', left: 'dumpClear' },
  fill: { hookedUp: 'fillPosition', full: 'fill', left: 'fillClear' },
}

/** From leaving a place until a tender can be back there, with nobody in the way. [s] */
export function awayFrom_s(place: PlaceKind, usual: TripTimes): number {
  const road_s = usual.toFill + usual.toDump
  return place === 'dump' ? road_s + usual.fillPosition + usual.fill + usual.fillClear : road_s + usual.dumpPosition + usual.dump + usual.dumpClear
}
