import type { SiteKind } from '@/app/_look/site-shapes'
import type { Bounds, Point } from '@/lib/geo'
import type { Leg } from '@/lib/plan'

/** A place shown on the map as a symbol with its name. */
export type MapSite = {
  id: string
  kind: SiteKind
  point: Point
  name: string
  /** A letter or number of its own, say of the second fill site. */
  letter?: string
  /** A few words under the name, such as what limits there. */
  note?: string
  /** Asks for attention, with the note saying why. */
  isMarked?: boolean
  isChosen?: boolean
  isGhost?: boolean
  isMovable?: boolean
}

/** A way that is driven, loaded or empty. */
export type MapRoute = {
  id: string
  path: readonly Point[]
  load: 'full' | 'empty'
  /** `measured` and `handbook` legs, and any whose path is only a straight line, are drawn as such. */
  by: Leg['by']
  isStraight?: boolean
  isChosen?: boolean
  /** A way not driven by this plan: drawn faintly. */
  isQuiet?: boolean
}

export type MapHandle = {
  fitTo(points: readonly Point[] | Bounds): void
  centreOn(point: Point): void
  /** Draws other routes than those given as a property, at once and without rendering; undefined: those given again. */
  drawRoutes(routes: readonly MapRoute[] | undefined): void
  centre(): Point
}
