import { issue, type Issue } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import { draftLimitAt } from './draft-limit'
import type { ShuttleSpec } from './spec'
import { specBreaches } from './spec-breaches'
import { waysOfTender } from './way-table'

/**
 * What is wrong or doubtful in a spec before any run is made.
 *
 * @returns `spec-out-of-range` (block: `compileShuttle` would throw), `no-tender-comes`,
 *   `no-demand`, `tank-below-draft-limit`, `tank-below-reserve`, `tank-smaller-than-load`,
 *   `dump-without-tender`, `withdrawn-before-arrival`
 */
export function checkSpec(spec: ShuttleSpec): Issue[] {
  const breaches = specBreaches(spec)
  if (breaches.length > 0) {
    return breaches.map(({ subjectId, path, value, rule }) =>
      issue('spec-out-of-range', 'block', subjectId ? [subjectId] : [], { path, value, rule }))
  }
  const issues: Issue[] = []
  const coming = spec.tenders.filter(({ arrive_s }) => arrive_s !== undefined && arrive_s < spec.horizon_s)
  if (coming.length === 0) issues.push(issue('no-tender-comes', 'block'))
  const flow_gpm = spec.demand.stages.reduce((most, stage) => Math.max(most, stage.flow_gpm), 0)
  if (flow_gpm === 0) issues.push(issue('no-demand', 'note'))
  spec.dumps.forEach((dump, i) => {
    const share_gpm = flow_gpm * dump.demandShare
    const limit_gal = draftLimitAt(dump, share_gpm)
    const reserve_gal = limit_gal + (share_gpm * spec.demand.reserve_s) / SECONDS_PER_MINUTE
    const values = { capacity_gal: dump.capacity_gal, flow_gpm: share_gpm }
    if (share_gpm > 0 && limit_gal >= dump.capacity_gal) {
      issues.push(issue('tank-below-draft-limit', 'block', [dump.id], { ...values, limit_gal }))
    } else if (reserve_gal > dump.capacity_gal) {
      issues.push(issue('tank-below-reserve', 'warn', [dump.id], { ...values, reserve_gal }))
    }
    const comers = coming.filter((tender) => waysOfTender(tender).some(({ dumpIndex }) => dumpIndex === i))
    const isFed = spec.feeds?.some(({ dumpIndex }) => dumpIndex === i) ?? false
    if (comers.length === 0 && !isFed && dump.demandShare > 0) issues.push(issue('dump-without-tender', 'warn', [dump.id]))
    const load_gal = comers.reduce((most, { usable_gal }) => Math.max(most, usable_gal), 0)
    const takes_gal = dump.front?.capacity_gal ?? dump.capacity_gal
    if (load_gal > takes_gal) {
      issues.push(issue('tank-smaller-than-load', 'note', [dump.id], { capacity_gal: takes_gal, load_gal }))
    }
  })
  for (const { id, arrive_s, withdraw_s } of coming) {
    if (arrive_s !== undefined && withdraw_s !== undefined && withdraw_s <= arrive_s) {
      issues.push(issue('withdrawn-before-arrival', 'note', [id], { arrive_s, withdraw_s }))
    }
  }
  return issues
}
