import type { TenderPoint } from '@/lib/exercise'
import type { MapSite } from '../_map'
import { say, type NameOf } from '../_text'
import '../_text/areas/exercise'

/** Tenders where they are, each under its short name. */
export const pointsOnMap = (points: readonly TenderPoint[], names: NameOf): MapSite[] =>
  points.map(({ id, point, short, isHeldUp }) => ({ id, kind: 'tender', point, name: names(id) ?? id, letter: short, ...(isHeldUp && { isMarked: true, note: say('exercise.held-up') }) }))
