'use client'

import type { HoseLayAnswer, LayPumper } from '@/lib/supply'
import { formatGiven, formatQuantity, formatShare, inUnits, listWords, type NameOf, say } from '../_text'
import '../_text/areas/hose'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

/** The pumpers from the source on, with every pressure, and what is left when one of them stops. */
export function PumperTable({ answer: { pumpers, stops, spareIds }, names }: { answer: HoseLayAnswer; names: NameOf }) {
  const [system] = useUnitSystem()
  const psi = (value: number | undefined, absent: string) => (value === undefined ? absent : formatQuantity(value, 'psi', system))
  const flow = (value: number) => formatGiven(value, system)
  const ifStops = ({ id }: LayPumper): string => {
    const stop = stops.find((one) => one.id === id)
    if (!stop || stop.flow_gpm <= 0) return say('hose.flow.none')
    return stop.keepsFlow ? say('hose.stops.keeps') : flow(stop.flow_gpm)
  }
  return (
    <div className={styles.sheet}>
      <DataTable
        caption={say('hose.pumpers.table')} rows={pumpers} rowKey={({ id }) => id}
        columns={[
          { key: 'pumper', head: say('hose.column.pumper'), cell: ({ id }) => names(id) ?? id },
          { key: 'at', head: say('hose.column.at'), isNumber: true, cell: ({ at_ft }) => formatQuantity(at_ft, 'ft', system) },
          { key: 'intake', head: say('hose.column.intake'), isNumber: true, cell: ({ intake_psi }) => psi(intake_psi, say('hose.drafts')) },
          { key: 'discharge', head: say('hose.column.discharge'), isNumber: true, cell: ({ discharge_psi, dischargeLimit_psi }) => <Over first={psi(discharge_psi, '')} second={psi(dischargeLimit_psi, '')} /> },
          { key: 'most', head: say('hose.column.most'), isNumber: true, cell: ({ most_gpm }) => flow(most_gpm) },
          { key: 'share', head: say('hose.column.share'), isNumber: true, cell: ({ capacityShare }) => formatShare(capacityShare) },
          { key: 'rated', head: say('hose.column.rated'), isNumber: true, cell: ({ rated_gpm, handRating_gpm }) => <Over first={flow(rated_gpm)} second={handRating_gpm === undefined ? inUnits(say('hose.beyond'), system) : flow(handRating_gpm)} /> },
          { key: 'relief', head: say('hose.column.relief'), isNumber: true, cell: ({ intakeRelief_psi }) => psi(intakeRelief_psi, say('hose.no-relief')) },
          { key: 'stop', head: say('hose.column.stopped'), isNumber: true, cell: ifStops },
        ]}
      />
      <p className={styles.quiet}>{say('hose.pumpers.note')}</p>
      {spareIds.length > 0 && <p className={styles.quiet}>{say('hose.pumpers.spare', { list: listWords(spareIds.map((id) => names(id) ?? id)) })}</p>}
    </div>
  )
}

/** A figure and, under it, the one it is held against; the head says which is which. */
const Over = ({ first, second }: { first: string; second: string }) => <>{first}{' '}<span className={styles.under}>{second}</span></>
