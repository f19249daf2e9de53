'use client'

import { useMemo } from 'react'
import { classicalLiftTable, draftCapacity } from '@/lib/hydraulics'
import type { DraftSheet } from '@/lib/supply'
import { formatQuantity, formatShare, formatValue, inUnits, say } from '../_text'
import '../_text/areas/draft'
import { Card } from '../_ui/card'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'

/** Within this share of theirs a cell counts as met. */
const MET_SHARE = 0.05

/** Every cell of the classical table of discharge at lifts beside ours, misses kept. */
export function ClassicalCard({ sheet }: { sheet: DraftSheet }) {
  const [system] = useUnitSystem()
  const { altitude_ft, water_degF, columns, rows } = classicalLiftTable
  const ours = useMemo(() => rows.map(({ lift_ft, length_ft }) => columns.map(({ rated_gpm, size_in }) =>
    draftCapacity({ pumper: { rated_gpm }, suction: { size_in, length_ft, lineCount: 1 }, place: { lift_ft, altitude_ft, water_degF }, ask: { netPressure_psi: 0 } }).suctionSide_gpm)), [altitude_ft, water_degF, columns, rows])
  const offs = rows.flatMap(({ flows_gpm }, row) => flows_gpm.map((theirs, column) => (ours[row]?.[column] ?? 0) / theirs - 1))
  const met = offs.filter((off) => Math.abs(off) <= MET_SHARE).length
  const isOwn = (rated_gpm: number, size_in: number) => rated_gpm === sheet.pump.rated_gpm && size_in === sheet.suction.size_in
  return (
    <Card title={say('draft.classical')} summary={say('draft.classical.summary', { met, all: offs.length })}>
      <p className={styles.quiet}>{inUnits(say('draft.classical.text', { altitude: formatQuantity(altitude_ft, 'ft', system), water: formatQuantity(water_degF, 'degF', system) }), system)}{system !== 'us' && ` ${say('draft.classical.published')}`}</p>
      <div className={styles.scroll} role="region" aria-label={say('draft.classical')} tabIndex={0}>
        <table className={styles.classical}>
          <caption className={styles.quiet}>{say('draft.classical.caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('draft.lift')}</th>
              {columns.map(({ rated_gpm, size_in }) => (
                <th key={`${rated_gpm} ${size_in}`} scope="col" className={joinClasses(isOwn(rated_gpm, size_in) && styles.ownColumn)}>
                  {formatQuantity(rated_gpm, 'gpm', system)}<br />{formatQuantity(size_in, 'in', system)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ lift_ft, length_ft, flows_gpm }, row) => (
              <tr key={lift_ft}>
                <th scope="row">{formatQuantity(lift_ft, 'ft', system)}<span className={styles.hose}>{say('draft.classical.hose', { length: formatQuantity(length_ft, 'ft', system) })}</span></th>
                {flows_gpm.map((theirs, index) => {
                  const our_gpm = ours[row]?.[index] ?? 0
                  const off = our_gpm / theirs - 1
                  const column = columns[index]
                  return (
                    <td key={index} className={joinClasses(column && isOwn(column.rated_gpm, column.size_in) && styles.ownColumn, Math.abs(off) > MET_SHARE && styles.miss)}>
                      <span className={styles.ours}>{formatValue(our_gpm, 'gpm', system, { style: 'headline' })}</span>
                      <span className={styles.theirs}>{formatValue(theirs, 'gpm', system)}</span>
                      <span className={styles.off}>{Math.abs(off) > MET_SHARE && say('draft.classical.miss')} {off > 0 ? '+' : ''}{formatShare(off, 0)}</span>
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className={styles.quiet}>{inUnits(say('draft.classical.misses'), system)}</p>
    </Card>
  )
}
