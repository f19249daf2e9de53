'use client'

import { FIELD_RULE_COVER_FT, atmosphericHead_ft, draftCapacity, dryHydrantPipeLoss_ftPer100ft, ratedSuction, velocityHead_ft, vortexSubmergence_ft } from '@/lib/hydraulics'
import type { DraftSheet } from '@/lib/supply'
import { formatGiven, formatQuantity, formatShare, say } from '../_text'
import '../_text/areas/draft'
import { Card } from '../_ui/card'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import { rangeText } from './sheet-words'

type Row = { readonly key: string; readonly topic: string; readonly sources: string; readonly choice: string; readonly here: string }

const HYDRANT_IN = 6
const HYDRANT_GPM = 500
const FOOT_VALVE_HEADS = { low: 0.8, high: 15 } as const

/** Where published figures disagree, which is followed and why, and what it comes to here. */
export function ConflictsCard({ sheet }: { sheet: DraftSheet }) {
  const [system] = useUnitSystem()
  const { place, pumper, suction, capacity } = sheet
  const ft = (value: number) => formatQuantity(value, 'ft', system)
  const thousands = place.altitude_ft / 1000
  const lost_ft = atmosphericHead_ft(0, place.barometer_inHg) - atmosphericHead_ft(place.altitude_ft, place.barometer_inHg)
  const at15 = draftCapacity({ pumper, suction: ratedSuction(pumper.rated_gpm).suction, place: { ...place, lift_ft: 15 }, ask: { netPressure_psi: 0 } }).suctionSide_gpm
  const line_gpm = capacity.flow_gpm / suction.lineCount
  const heads_ft = velocityHead_ft(line_gpm, suction.size_in)
  const rows: readonly Row[] = (['altitude', 'fifteen', 'pipe', 'cover', 'foot-valve'] as const).map((key) => ({
    key, topic: say(`draft.conflict.${key}`), sources: say(`draft.conflict.${key}.sources`), choice: say(`draft.conflict.${key}.choice`),
    here: {
      altitude: say('draft.conflict.altitude.here', { altitude: ft(place.altitude_ft), ours: ft(lost_ft), low: ft(Math.max(0, thousands)), high: ft(Math.max(0, 2 * thousands)) }),
      fifteen: say('draft.conflict.fifteen.here', { pump: sheet.pump.name, ours: formatShare(at15 / pumper.rated_gpm), flow: formatGiven(at15, system) }),
      pipe: say('draft.conflict.pipe.here', { ours: ft(dryHydrantPipeLoss_ftPer100ft(HYDRANT_GPM, HYDRANT_IN)), flow: formatQuantity(HYDRANT_GPM, 'gpm', system), size: formatQuantity(HYDRANT_IN, 'in', system), length: ft(100) }),
      cover: say('draft.conflict.cover.here', { flow: formatGiven(line_gpm, system), size: formatQuantity(suction.size_in, 'in', system), rule: ft(FIELD_RULE_COVER_FT), vortex: ft(vortexSubmergence_ft(line_gpm, suction.size_in)) }),
      'foot-valve': say('draft.conflict.foot-valve.here', { flow: formatGiven(line_gpm, system), range: rangeText(FOOT_VALVE_HEADS.low * heads_ft, FOOT_VALVE_HEADS.high * heads_ft, 'ft', system) }),
    }[key],
  }))
  return (
    <Card title={say('draft.conflicts')} summary={say('draft.conflicts.summary')}>
      <DataTable
        caption={say('draft.conflicts')} isCaptionHidden rows={rows} rowKey={({ key }) => key}
        columns={[
          { key: 'topic', head: say('draft.conflict.topic'), cell: ({ topic }) => topic },
          { key: 'sources', head: say('draft.conflict.sources'), cell: ({ sources }) => sources },
          { key: 'choice', head: say('draft.conflict.choice'), cell: ({ choice }) => choice },
          { key: 'here', head: say('draft.conflict.here'), cell: ({ here }) => here },
        ]}
      />
    </Card>
  )
}
