import { wrap } from 'comlink'
import type { Issue } from '@/lib/issue'
import type { GroundHeights } from '@/lib/plan'
import type { GroundHeight } from '@/lib/terrain'
import { guardOf } from '../guard-worker'
import { onFirstCall } from '../on-first-call'
import type { GroundDrawing, GroundService } from './ground-service'
import type { SteepestGrades } from './steepest-grades'

function start(): GroundService {
  const worker = new Worker(new URL('./ground.worker.ts', import.meta.url))
  const port = wrap<GroundService>(worker), guard = guardOf(worker)
  return {
    draw: (terrain, unit) => guard<GroundDrawing | Issue>(port.draw(terrain, unit)),
    heights: (terrain, points) => guard<(GroundHeight | undefined)[] | Issue>(port.heights(terrain, points)),
    grades: (terrain, path) => guard<SteepestGrades | Issue>(port.grades(terrain, path)),
    layHeights: (district, lays) => guard<GroundHeights[]>(port.layHeights(district, lays)),
  }
}

/** The ground's worker of this window; it starts with the first call. Only in a browser. */
export const getGround = onFirstCall(start)
