import { HYDRANT_RESIDUAL_PSI, hoseCoefficient, velocity_ftPerS } from '../hydraulics'
import { issue, type Issue } from '../issue'
import type { Arrangement, CompiledRelay } from './arrangement'
import type { RelayPumperResult } from './relay-pumper-result'

/** Water this fast in hose makes a hard blow when a valve is shut at once. Common practice, no source. */
const FAST_FTPERS = 15
/** A pump this near its most has nothing left for a warm engine or a kinked hose. Common practice, no source. */
const NEAR_MOST_SHARE = 0.95
/** A relief set this near what stands at the intake opens whenever the flow stops. Common practice, no source. */
const CLOSE_RELIEF_PSI = 5
/** Two pumpers nearer than this stand at one place. */
const ONE_PLACE_FT = 50

/**
 * What a relay's officers should know before they lay it, as data.
 *
 * @returns `relay-pumper-near-most`, `relay-hydrant-low` (warn); `relay-tandem`, `relay-source-smaller`, `relay-relief-close`,
 *   `relay-fast-water`, `relay-hose-interpolated` (note)
 */
export function relayIssues({ spec, line, source }: CompiledRelay, { flow_gpm }: Arrangement, pumpers: readonly RelayPumperResult[]): Issue[] {
  const issues: Issue[] = []
  const ratingOf = (id: string) => spec.pumpers.find((one) => one.id === id)?.pumper.rated_gpm ?? (spec.source.kind === 'draft' ? spec.source.draft.pumper.rated_gpm : spec.source.pumper.rated_gpm)
  pumpers.forEach(({ id, at_ft, isSource, capacityShare, stoppedIntake_psi, intakeRelief_psi }, i) => {
    const before = pumpers[i - 1]
    if (!isSource && capacityShare >= NEAR_MOST_SHARE) issues.push(issue('relay-pumper-near-most', 'warn', [id], { capacityShare }))
    if (before && at_ft - before.at_ft < ONE_PLACE_FT) issues.push(issue('relay-tandem', 'note', [before.id, id], {}))
    if (!isSource && ratingOf(id) > ratingOf(spec.source.id)) issues.push(issue('relay-source-smaller', 'note', [spec.source.id, id], { rated_gpm: ratingOf(id), sourceRated_gpm: ratingOf(spec.source.id) }))
    if (stoppedIntake_psi !== undefined && intakeRelief_psi !== undefined && intakeRelief_psi < stoppedIntake_psi + CLOSE_RELIEF_PSI) {
      issues.push(issue('relay-relief-close', 'note', [id], { stopped_psi: stoppedIntake_psi, relief_psi: intakeRelief_psi }))
    }
  })
  const left_psi = source.intake_psi(flow_gpm)
  if (left_psi !== undefined && left_psi < HYDRANT_RESIDUAL_PSI + 5) issues.push(issue('relay-hydrant-low', 'warn', [spec.source.id], { left_psi }))
  const fastest_ftPerS = Math.max(...line.fastest.map(({ size_in, flowShare }) => velocity_ftPerS(flow_gpm * flowShare, size_in)))
  if (fastest_ftPerS >= FAST_FTPERS) issues.push(issue('relay-fast-water', 'note', [], { speed_mph: (fastest_ftPerS * 3600) / 5280 }))
  const guessed = new Set(spec.lay.flatMap(({ lines }) => lines).filter(({ size_in, coefficient }) => coefficient === undefined && hoseCoefficient(size_in).mark === 'interpolated').map(({ size_in }) => size_in))
  for (const size_in of guessed) issues.push(issue('relay-hose-interpolated', 'note', [], { size_in }))
  return issues
}
