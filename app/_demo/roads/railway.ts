import type { Spot } from '../frame'
import { curveThrough, resample, simplify, soften } from '../geometry/line'
import { spot } from '../geometry/spot'
import type { Tags } from './network'

export const railwayTags: Tags = { railway: 'rail', name: 'Ostrel Valley Line', gauge: '1435', usage: 'branch', operator: 'Ostrel Valley Line (invented)' }

/** A single track down the valley, on the low ground between the state road and the river. */
const through: readonly (readonly [number, number])[] = [
  [-250, 3500], [800, 3400], [1500, 3640], [2250, 4060], [3500, 4590], [4725, 4860], [5290, 5110], [5650, 5225], [6010, 5262], [6430, 5420],
  [6690, 5600], [7230, 5900], [7700, 6440], [8220, 6660], [8590, 6990], [9030, 7380], [9390, 7990], [9950, 8480], [10170, 9250],
]

export const railwayLine = (): Spot[] => simplify(soften(resample(curveThrough(through.map(([x, y]) => spot(x, y))), 40), 4), 0.8)
