import type { Unit } from '@/lib/units'
import { formatQuantity } from './format-quantity'
import type { UnitSystem } from './unit-system'

const WRITTEN = { gpm: 'gpm', gal: 'gal', psi: 'psi', ft: 'ft', in: 'in', mi: 'mi', inHg: 'inHg', '°F': 'degF' } as const satisfies Readonly<Record<string, Unit>>
const FIGURE = new RegExp(`(\\d[\\d,]*(?:\\.\\d+)?)[ \\u00a0](${Object.keys(WRITTEN).join('|')})(?!\\w)`, 'g')

/**
 * A fixed sentence with its figures in the units in use: "at 1,000 gpm" reads "at 3,785 L/min" for who works in metric.
 *
 * @param text with US customary figures, each with its own unit ("4 ft to 16 ft", never "4 to 16 ft")
 */
export const inUnits = (text: string, system: UnitSystem): string =>
  system === 'us' ? text : text.replace(FIGURE, (_, digits: string, unit: keyof typeof WRITTEN) => formatQuantity(Number(digits.replaceAll(',', '')), WRITTEN[unit], system))
