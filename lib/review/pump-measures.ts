import { psiFromFeetOfWater } from '../units'
import type { LogEvents, Reading } from './log-events'
import { GUESS_SPREAD } from './mean-with-doubt'
import type { Measure } from './measure'

/** Flow and pressure read so far apart are of one moment. Assumed. */
const TOGETHER_S = 120

/**
 * What pumpers at draft showed: from hooked up to prime got, and flow with the pressure read beside it.
 *
 *   net pressure = gauge pressure + lift; friction in the suction is left out, so the pump gave a little more than is said
 */
export function pumpMeasures({ readings, compiled }: LogEvents): Measure[] {
  const sites = compiled?.bundle.plan.fillSites ?? []
  const pumperOf = ({ apparatusId, post }: Reading): string | undefined => apparatusId ?? sites.find(({ id }) => id === post.siteId)?.pumperId ?? (sites.length === 1 ? sites[0]?.pumperId : undefined)
  const atDraft = readings.filter(({ post }) => post.kind === 'draft')
  return atDraft.flatMap((reading): Measure[] => {
    const itemId = pumperOf(reading)
    if (itemId === undefined) return []
    const same = atDraft.filter((one) => pumperOf(one) === itemId)
    if (reading.kind === 'primeGot') {
      const from = same.findLast(({ kind, at_s }) => kind === 'hookedUp' && at_s < reading.at_s)
      const took_s = from && reading.at_s - from.at_s
      return took_s ? [{ doc: 'district', collection: 'apparatus', itemId, field: 'priming_s', value: took_s, count: 1, low: took_s, high: took_s, spreadShare: GUESS_SPREAD, withheld: 'once' }] : []
    }
    if (reading.kind !== 'flow' || !reading.value) return []
    const gauge = same.filter(({ kind, at_s }) => kind === 'pressure' && Math.abs(at_s - reading.at_s) <= TOGETHER_S).sort((a, b) => Math.abs(a.at_s - reading.at_s) - Math.abs(b.at_s - reading.at_s))[0]
    if (gauge?.value === undefined || gauge.value <= 0) return []
    const lift_ft = compiled?.fills.find(({ site }) => site.pumperId === itemId)?.lift?.lift_ft ?? 0
    const flow_gpm = reading.value
    return [{
      doc: 'district', collection: 'apparatus', itemId, field: 'curvePoints', value: flow_gpm, count: 1, low: flow_gpm, high: flow_gpm, spreadShare: GUESS_SPREAD,
      netPressure_psi: gauge.value + psiFromFeetOfWater(Math.max(0, lift_ft)),
    }]
  })
}
