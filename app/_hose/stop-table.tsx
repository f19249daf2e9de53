'use client'

import type { LayStop } from '@/lib/supply'
import { formatGiven, formatQuantity, say, type NameOf } from '../_text'
import '../_text/areas/hose'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

type Row = { readonly key: string; readonly stopped: string; readonly flow_gpm: number; readonly left?: LayStop['pumpers'][number] }

/** For each pumper that may stop: what is left, and the pressures the others then work at. Nothing where a lay has one pumper. */
export function StopTable({ stops, names }: { stops: readonly LayStop[]; names: NameOf }) {
  const [system] = useUnitSystem()
  if (stops.length < 2) return null
  const name = (id: string) => names(id) ?? id
  const psi = (value: number | undefined, absent: string) => (value === undefined ? absent : formatQuantity(value, 'psi', system))
  const rows = stops.flatMap(({ id, flow_gpm, pumpers }): Row[] => {
    const stop = { stopped: name(id), flow_gpm }
    return pumpers.length === 0 ? [{ key: id, ...stop }] : pumpers.map((left) => ({ key: `${id} ${left.id}`, ...stop, left }))
  })
  return (
    <div className={styles.sheet}>
      <DataTable
        caption={say('hose.stop-table')} rows={rows} rowKey={({ key }) => key}
        columns={[
          { key: 'stopped', head: say('hose.column.stops'), cell: ({ stopped }) => stopped },
          { key: 'flow', head: say('hose.column.left'), isNumber: true, cell: ({ flow_gpm }) => (flow_gpm > 0 ? formatGiven(flow_gpm, system) : say('hose.flow.none')) },
          { key: 'other', head: say('hose.column.pumper'), cell: ({ left }) => (left ? name(left.id) : say('hose.stop-table.source')) },
          { key: 'intake', head: say('hose.column.intake'), isNumber: true, cell: ({ left }) => (left ? psi(left.intake_psi, say('hose.drafts')) : '') },
          { key: 'discharge', head: say('hose.column.discharge'), isNumber: true, cell: ({ left }) => (left ? say('hose.stop-table.of', { now: psi(left.discharge_psi, ''), most: psi(left.dischargeLimit_psi, '') }) : '') },
        ]}
      />
      <p className={styles.quiet}>{say('hose.stop-table.note')}</p>
    </div>
  )
}
