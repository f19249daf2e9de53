import { defaultWorkingPressure_psi, hoseCoefficient } from '../../hydraulics'
import { issue, type Issue } from '../../issue'
import type { District, Equipment, Lay, LayStretch } from '../../plan'
import type { LaySegment } from '../../relay'
import { defaults } from '../defaults'
import { take, type Ledger } from '../ledger'

/** A stretch as it is reckoned, and where its hose's numbers come from. */
export type LaidStretch = {
  readonly id: string
  readonly size_in: number
  readonly lineCount: number
  readonly length_ft: number
  readonly coefficient: number
  readonly coefficientFrom: 'entered' | 'stock' | 'catalogue'
  readonly working_psi: number
  readonly workingFrom: 'stock' | 'default'
  readonly isByHand: boolean
}

export type LaidHose = {
  readonly hose_ft: number
  readonly stretches: readonly LaidStretch[]
  readonly segments: readonly LaySegment[]
  readonly issues: readonly Issue[]
}

/**
 * The hose of a lay: lengths that are not entered share what the others leave of the way.
 *
 *   whole = way · lay factor, or the entered lengths where every stretch has one
 *
 * Friction and working pressure are those of the district's own hose of that size, the worst of it where pieces differ; of a piece
 * that says none, and where there is no such hose, friction is the catalogue's.
 *
 * @param way_ft level length of the way, above 0
 * @returns hose; issues `lay-stretch-left-out`, `lay-appliance-off` (warn)
 */
export function layHose(district: District, ledger: Ledger, lay: Lay, way_ft: number): LaidHose {
  const issues: Issue[] = []
  const entered_ft = lay.stretches.reduce((sum, { length_ft = 0 }) => sum + length_ft, 0)
  const openCount = lay.stretches.filter(({ length_ft }) => length_ft === undefined).length
  const whole_ft = openCount === 0 ? entered_ft : way_ft * take(ledger, lay, 'layFactor', undefined, defaults.layFactor)
  const rest_ft = openCount > 0 ? Math.max(0, whole_ft - entered_ft) / openCount : 0
  const stretches = lay.stretches.flatMap((stretch): LaidStretch[] => {
    const length_ft = stretch.length_ft ?? rest_ft
    if (length_ft >= 1) return [laidStretch(district, stretch, length_ft)]
    issues.push(issue('lay-stretch-left-out', 'warn', [lay.id], { size_in: stretch.size_in }))
    return []
  })
  const hose_ft = stretches.reduce((sum, { length_ft }) => sum + length_ft, 0)
  let from_ft = 0
  const segments = stretches.map(({ length_ft, size_in, lineCount, coefficient, working_psi }, i): LaySegment => {
    const start_ft = from_ft, isLast = i === stretches.length - 1
    from_ft += length_ft
    const appliances = (lay.appliances ?? []).filter(({ at_ft }) => at_ft >= start_ft && (at_ft < from_ft || (isLast && at_ft <= hose_ft)))
    return {
      length_ft, lines: Array.from({ length: lineCount }, () => ({ size_in, coefficient, working_psi })),
      ...(appliances.length > 0 && { appliances: appliances.map(({ kind, at_ft }) => ({ kind, at_ft: Math.min(length_ft, at_ft - start_ft) })) }),
    }
  })
  for (const { at_ft } of lay.appliances ?? []) if (at_ft > hose_ft) issues.push(issue('lay-appliance-off', 'warn', [lay.id], { at_ft, hose_ft }))
  return { hose_ft, stretches, segments, issues }
}

type Hose = Extract<Equipment, { kind: 'hose' }>

/** Sizes closer than this are one size. [in] */
export const sameSize = (a_in: number, b_in: number): boolean => Math.abs(a_in - b_in) < 0.01

/** The district’s hose of a size. */
export const hoseOfSize = (district: Pick<District, 'equipment'>, size_in: number): Hose[] =>
  district.equipment.filter((item): item is Hose => item.kind === 'hose' && sameSize(item.size_in, size_in))

/** `hose`: the piece it is of, where it is the district's. */
export type SizeCoefficient = { readonly coefficient: number } & ({ readonly coefficientFrom: 'stock'; readonly hose: Hose } | { readonly coefficientFrom: 'catalogue' })

/**
 * Friction coefficient of hose of a size, for every line that is laid of it: that of the district's own, the worst where pieces differ.
 * A piece nobody has tested counts as the catalogue has it: nobody knows which one comes.
 */
export function coefficientOfSize(district: Pick<District, 'equipment'>, size_in: number): SizeCoefficient {
  const catalogue = hoseCoefficient(size_in).coefficient
  const pieces = hoseOfSize(district, size_in)
  const tested = pieces.flatMap((hose) => (hose.coefficient === undefined ? [] : [{ coefficient: hose.coefficient, hose }]))
  const [worst] = tested.sort((a, b) => b.coefficient - a.coefficient)
  const isWorst = worst && (worst.coefficient >= catalogue || tested.length === pieces.length)
  return isWorst ? { ...worst, coefficientFrom: 'stock' } : { coefficient: catalogue, coefficientFrom: 'catalogue' }
}

function laidStretch(district: District, { id, size_in, lineCount = 1, coefficient, isByHand = false }: LayStretch, length_ft: number): LaidStretch {
  const friction = coefficient === undefined ? coefficientOfSize(district, size_in) : { coefficient, coefficientFrom: 'entered' as const }
  const stockWorking_psi = hoseOfSize(district, size_in).flatMap((hose) => hose.working_psi ?? [])
  return {
    id, size_in, lineCount, length_ft, isByHand,
    coefficient: friction.coefficient, coefficientFrom: friction.coefficientFrom,
    working_psi: stockWorking_psi.length > 0 ? Math.min(...stockWorking_psi) : defaultWorkingPressure_psi(size_in),
    workingFrom: stockWorking_psi.length > 0 ? 'stock' : 'default',
  }
}
