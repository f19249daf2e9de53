import type { TenderView } from '@/lib/exercise'
import { formatMinutes, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/exercise'
import { DataTable } from '../_ui/data-table'

/** Where every tender is. */
export function TenderTable({ tenders, names, system }: { tenders: readonly TenderView[]; names: NameOf; system: UnitSystem }) {
  return (
    <DataTable
      caption={say('exercise.tenders')} rows={tenders} rowKey={({ id }) => id}
      columns={[
        { key: 'tender', head: say('exercise.tender'), cell: ({ id }) => names(id) ?? id },
        { key: 'where', head: say('exercise.tender.where'), cell: ({ phase, siteId, isHeldUp, rolls_s }) => say(isHeldUp ? 'exercise.phase.held-up' : rolls_s !== undefined ? 'exercise.phase.turns-out' : `exercise.phase.${phase}`, { site: names(siteId) ?? siteId }) },
        { key: 'load', head: say('exercise.tender.load'), isNumber: true, cell: ({ load_gal }) => formatQuantity(load_gal, 'gal', system) },
        { key: 'left', head: say('exercise.tender.left'), isNumber: true, cell: ({ left_s, rolls_s = left_s }) => (rolls_s === undefined ? '' : formatMinutes(rolls_s, 'up')) },
      ]}
    />
  )
}
