import type { CompiledPlan } from '../compile-plan'
import { defaults } from '../defaults'
import { findLegNote, type LegUse, type Way } from '../legs'
import type { Working } from '../working'
import { computed, given, working } from './inputs'

/** Travel time of one way: measured, by the roads, or by the handbook's formula. */
export function explainWay({ bundle, ledger }: CompiledPlan, use: LegUse, way: Way): Working {
  const note = findLegNote(bundle, use.fromId, use.toId, use.apparatusId)
  if (way.by === 'measured')
    return working('leg-measured', 'travel_s', way.travel_s, note?.evidence?.travel_s?.source ?? '', note ? [given(ledger, note, 'travel_s', way.travel_s)] : [])
  if (way.by === 'routed')
    return working('leg-routed', 'travel_s', way.travel_s, bundle.district.roads?.attribution ?? '', [computed('distance_mi', way.distance_mi, bundle.district.roads?.name ?? '')])
  const average_mph = note?.average_mph ?? bundle.district.average_mph ?? defaults.average_mph.value
  const distance = note?.distance_mi !== undefined
    ? given(ledger, note, 'distance_mi', way.distance_mi)
    : way.isStraight
      ? computed('distance_mi', way.distance_mi, 'straight line × road factor')
      : computed('distance_mi', way.distance_mi)
  return working('leg-handbook', 'travel_s', way.travel_s, 'water shuttle lesson plan; NFPA 1142 annex (common figure, not checked against the published text)', [
    distance, { ...computed('average_mph', average_mph, defaults.average_mph.source), from: { itemId: note?.id ?? bundle.district.id, field: 'average_mph', mark: 'handbook', source: defaults.average_mph.source } },
  ])
}
