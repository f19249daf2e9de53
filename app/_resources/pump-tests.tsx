'use client'

import { calibrateRequiredHead } from '@/lib/hydraulics'
import type { DraftingPump, TestPoint } from '@/lib/plan'
import { defaults, pumperHydraulics } from '@/lib/supply'
import { useItem } from '../_fields/item-context'
import { say } from '../_text'
import '../_text/areas/resources'
import { IssueList } from '../_ui/issue-list'
import { PointTable, type PointColumn } from './point-table'
import styles from './resources.module.css'

type CurvePoint = NonNullable<DraftingPump['curvePoints']>[number]

const testColumns: readonly PointColumn<TestPoint>[] = [
  { field: 'lift_ft', unit: 'ft', min: 0, max: 40, isRequired: true },
  { field: 'flow_gpm', unit: 'gpm', min: 1, max: 20_000, isRequired: true },
  { field: 'suction_in', unit: 'in', min: 0.5, max: 24, isRequired: true },
  { field: 'suction_ft', unit: 'ft', min: 0, max: 300, standIn: defaults.suctionLength_ft.value },
  { field: 'altitude_ft', unit: 'ft', min: -1500, max: 18_000, standIn: defaults.altitude_ft.value },
  { field: 'water_degF', unit: 'degF', min: 28, max: 130, standIn: defaults.water_degF.value },
]

const curveColumns: readonly PointColumn<CurvePoint>[] = [
  { field: 'netPressure_psi', unit: 'psi', min: 0, max: 600, isRequired: true },
  { field: 'flow_gpm', unit: 'gpm', min: 1, max: 20_000, isRequired: true },
]

/** The pump's own tests: they take the place of what its rating promises. */
export function PumpTests({ pump }: { pump: DraftingPump }) {
  const { set } = useItem()
  const { rated_gpm, testPoints = [], curvePoints = [] } = pump
  const canFit = rated_gpm !== undefined && rated_gpm > 0 && testPoints.every(({ flow_gpm }) => flow_gpm > 0)
  const head = canFit ? calibrateRequiredHead(pumperHydraulics(pump)) : undefined
  return (
    <section className={styles.tests}>
      <h4 className={styles.sectionTitle}>{say('resources.tests')}</h4>
      <p className={styles.quiet}>{say('resources.tests.text')}</p>
      <PointTable
        caption={say('resources.tests.draft')} columns={testColumns} points={testPoints}
        {...(head && testPoints.length > 0 && { residualShares: head.residualShares })}
        onChange={(points) => { set({ testPoints: points.length > 0 ? points : undefined }) }}
      />
      <PointTable
        caption={say('resources.tests.curve')} columns={curveColumns} points={curvePoints}
        onChange={(points) => { set({ curvePoints: points.length > 0 ? points : undefined }) }}
      />
      {head && head.issues.length > 0 && <IssueList issues={head.issues} names={() => pump.name} label={say('resources.tests')} />}
    </section>
  )
}
