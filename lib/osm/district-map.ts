import type { Bounds, Point } from '../geo'

/** What is drawn, in the order it is stored; never reorder within a version. */
export const mapLayers = ['majorRoad', 'mainRoad', 'minorRoad', 'localRoad', 'serviceRoad', 'track', 'waterway', 'water', 'building', 'place', 'source'] as const
export type MapLayer = (typeof mapLayers)[number]

/** Bottom to top as they are drawn: the more a road carries, the later. */
export const roadLayers = ['track', 'serviceRoad', 'localRoad', 'minorRoad', 'mainRoad', 'majorRoad'] as const satisfies readonly MapLayer[]
export type RoadLayer = (typeof roadLayers)[number]

/** Whether a layer of the map holds roads. */
export const isRoadLayer = (layer: MapLayer): layer is RoadLayer => (roadLayers as readonly MapLayer[]).includes(layer)

/** A place where the data says water may be had. */
export const sourceKinds = ['hydrant', 'suctionPoint', 'tank', 'pond', 'cistern', 'pool', 'pondHydrant'] as const
export type SourceKind = (typeof sourceKinds)[number]

export const placeKinds = ['city', 'town', 'village', 'hamlet', 'suburb', 'locality', 'isolated_dwelling', 'farm'] as const

/** One thing on the map. Lines and areas are rings or runs of points. */
export type MapFeature = {
  readonly layer: MapLayer
  /** Name, or the reference of an unnamed road; may be empty. */
  readonly name: string
  /** For places a place kind, for sources a source kind, for waterways and water the mapped kind, for roads 'bridge' or empty. */
  readonly kind: string
  /** Id of the mapped element. */
  readonly osmId: number
  /** What the data says of a source, `key=value` by semicolons. */
  readonly details: string
  readonly shape: 'point' | 'line' | 'area'
  /** One point; or one run of points; or rings, each outer one followed by its holes. */
  readonly runs: readonly (readonly Point[])[]
  /** Of each ring of an area: whether it is a hole of the outer ring before it. */
  readonly isHole: readonly boolean[]
}

export type DistrictMap = { readonly bounds: Bounds; readonly dataDate: string; readonly features: readonly MapFeature[] }
