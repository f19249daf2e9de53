import { describe, expect, test } from 'vitest'
import { nightDrawer, nightFlow, prepareDoubt, quantile } from '@/lib/doubt'
import { compilePlan, type CompiledPlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

/** Nothing measured; a lift that hydraulics feels, one bay or two, hose in play. */
const plans = {
  'nothing measured, lift 12 ft by half': { 'district.draftSites.0.lift_ft': 12, 'district.draftSites.0.evidence': { lift_ft: { mark: 'assumed', spreadShare: 0.5 } }, 'plan.fillSites.0.bayCount': 2, 'plan.dumpSites.0.positionCount': 2 },
  'long thin fill line': { 'plan.fillSites.0.fillLine': { size_in: 2.5, length_ft: 300, lineCount: 1 } },
  'one bay, short road': { 'plan.legNotes.0.distance_mi': 0.7 },
} as const

const NIGHTS = 200

/** The night compiled anew: all its numbers at once through hydraulics. */
function flowCompiledAnew(compiled: CompiledPlan, model: NonNullable<ReturnType<typeof prepareDoubt>>, night: ReturnType<ReturnType<typeof nightDrawer>>): number {
  const factors = new Map(model.inputs.flatMap(({ numberKeys }, index) => numberKeys.map((key) => [key, night.factors[index]!] as const)))
  const { spec, dumps } = compilePlan(compiled.bundle, { factors })
  if (!spec) return 0
  const tenders = spec.tenders.map((tender, index) => ({ ...tender, spread: model.spec.tenders[index]!.spread }))
  return nightFlow({ ...spec, tenders, seed: night.seed }, dumps.reduce((sum, { pump_gpm }) => sum + pump_gpm, 0), model.grid_gpm).flow_gpm
}

describe('a night read between compiled ends is the night compiled anew', () => {
  test.each(Object.entries(plans))('%s', (name, change) => {
    const compiled = compilePlan(smallBundle(change))
    const model = prepareDoubt(compiled)
    if (!model) throw new Error('the plan must have an answer')
    const draw = nightDrawer(model, 5)
    const pairs = Array.from({ length: NIGHTS }, (_, index) => {
      const night = draw(index)
      return { read_gpm: night.isBlocked ? 0 : nightFlow(night.spec, night.pump_gpm, model.grid_gpm).flow_gpm, anew_gpm: flowCompiledAnew(compiled, model, night) }
    })
    const offs = pairs.map(({ read_gpm, anew_gpm }) => Math.abs(read_gpm - anew_gpm) / Math.max(1, anew_gpm)).sort((a, b) => a - b)
    const bias = pairs.reduce((sum, { read_gpm, anew_gpm }) => sum + read_gpm - anew_gpm, 0) / pairs.reduce((sum, { anew_gpm }) => sum + anew_gpm, 0)
    const dependable = (of: 'read_gpm' | 'anew_gpm') => quantile(pairs.map((pair) => pair[of]).sort((a, b) => a - b), 0.1)
    process.stdout.write(`${name}: bias ${(100 * bias).toFixed(2)} %, off by ${(100 * quantile(offs, 0.5)).toFixed(2)} % in the middle night, ${(100 * quantile(offs, 0.95)).toFixed(2)} % in 19 of 20, at worst ${(100 * offs[offs.length - 1]!).toFixed(2)} %; dependable ${dependable('read_gpm').toFixed(1)} for ${dependable('anew_gpm').toFixed(1)} gpm\n`)
    expect(Math.abs(bias)).toBeLessThan(0.01)
    expect(quantile(offs, 0.95)).toBeLessThan(0.05)
    expect(Math.abs(dependable('read_gpm') / dependable('anew_gpm') - 1)).toBeLessThan(0.01)
  })
})
