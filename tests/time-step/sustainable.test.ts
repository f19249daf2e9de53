import { describe, expect, test } from 'vitest'
import { compileShuttle, sustainableFlow, type ShuttleSpec } from '@/lib/shuttle'
import { stepThrough } from './one-second-model'
import { randomSpecs } from './random-specs'

const LASTS_S = 7200

/** The step model's own verdict on one flow; the reserve must be kept from when every tender has emptied twice. */
function isHeld(spec: ShuttleSpec, flow: number, step: number): boolean {
  const reserveFrom = Math.max(0, ...stepThrough(spec, { lastsAfterReady: LASTS_S, step }).dumpedAt.map((times) => times[1] ?? 0))
  const answer = stepThrough(spec, { flow, lastsAfterReady: LASTS_S, reserveFrom, step })
  return answer.readyAt < Infinity && answer.losses === 0 && answer.keptReserve
}

describe('the sustainable flow', () => {
  // A second more or less decides whether a load comes just before or just after the reserve is touched, so steps of 1 s
  // differ by a little more than 1 % in one layout of six; with a tenth of a second hardly any difference is left.
  test('is held by plain steps 1 % below, and not 1 % above unless the haul is what limits it', () => {
    const specs = randomSpecs(50)
    const found = specs.map((spec) => sustainableFlow(compileShuttle(spec), { afterReady_s: LASTS_S }))
    const disagrees = (k: number, step: number): boolean => {
      const { flow_gpm, limitedBy } = found[k]!
      if (!isHeld(specs[k]!, 0.99 * flow_gpm, step)) return true
      return limitedBy !== 'haul' && limitedBy !== 'brought' && isHeld(specs[k]!, 1.01 * flow_gpm + 0.5, step)
    }
    const apart = specs.map((_, k) => k).filter((k) => disagrees(k, 1))
    const stillApart = apart.filter((k) => disagrees(k, 0.1))
    for (const k of stillApart) {
      const { flow_gpm, higher_gpm, limitedBy } = found[k]!
      process.stdout.write(`layout ${k}: ${flow_gpm.toFixed(1)} gpm limited by ${limitedBy}, a higher flow held: ${higher_gpm?.toFixed(1) ?? 'none'}\n`)
      // Only where the flow is not monotone, and so held again a little above.
      expect(higher_gpm).toBeDefined()
    }
    const within = specs.length - apart.length
    process.stdout.write(`sustainable flow within 1 %: ${within} of ${specs.length} with steps of 1 s, ${specs.length - stillApart.length} with 0.1 s\n`)
    expect(within).toBeGreaterThanOrEqual(0.8 * specs.length)
    expect(stillApart.length).toBeLessThanOrEqual(specs.length / 50)
  })
})
