import type { Point } from '../geo'

/** Lists of a district whose items stand at a place. */
export const districtLists = ['sources', 'draftSites', 'hazards', 'roadNotes', 'stations'] as const
/** Lists of a plan whose items stand at a place or run along a way. */
export const planLists = ['fillSites', 'dumpSites', 'hoseLays', 'legNotes'] as const
/** `fireGround` is the plan's own field; `ways` are worked out from the roads: they are given out and never read back. */
export const placeLists = [...districtLists, ...planLists, 'fireGround', 'ways'] as const

export type DistrictList = (typeof districtLists)[number]
export type PlanList = (typeof planLists)[number]
export type PlaceList = (typeof placeLists)[number]
/** Lists that rows of a file may become items of. */
export type ItemList = DistrictList | PlanList

export const isDistrictList = (list: string): list is DistrictList => districtLists.some((one) => one === list)
export const isPlanList = (list: string): list is PlanList => planLists.some((one) => one === list)
export const isPlaceList = (list: unknown): list is PlaceList => placeLists.some((one) => one === list)

/** What stands on the ground. Rings of an area: the outer one first. */
export type Shape =
  | { readonly kind: 'point'; readonly point: Point }
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly duration_s?: number }
  | { readonly kind: 'area'; readonly rings: readonly (readonly Point[])[] }

/** A text, number or yes and no. */
export type Scalar = string | number | boolean

/** One thing on its way out: fields are the item's own but for id, name and place. */
export type Place = {
  readonly list: PlaceList
  readonly id: string
  readonly name: string
  /** Absent where its ends are not known. */
  readonly shape?: Shape
  readonly fields: Readonly<Record<string, unknown>>
  /** Plan it belongs to. */
  readonly plan?: string
}

/** One thing as a file has it: a row of a table, or a feature. Columns by name; nothing is understood yet. */
export type FoundFeature = {
  /** Row as a spreadsheet counts it, or number of the feature from 1. */
  readonly at: number
  readonly shape?: Shape
  readonly values: Readonly<Record<string, Scalar>>
}
