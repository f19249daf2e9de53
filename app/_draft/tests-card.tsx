'use client'

import { useMemo } from 'react'
import { calibrateRequiredHead, draftCapacity, ratedSuction, type PumperHydraulics } from '@/lib/hydraulics'
import type { DraftSheet } from '@/lib/supply'
import { LineChart, type ChartSeries } from '../_charts/line-chart'
import { ItemFields } from '../_fields/item-context'
import { PumpTests } from '../_resources/pump-tests'
import { formatQuantity, formatShare, say } from '../_text'
import '../_text/areas/draft'
import { Card } from '../_ui/card'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'

const MOST_LIFT_FT = 30

/** The pump's own test points, how well the law fitted to them meets them, and what they change against the rating. */
export function TestsCard({ sheet }: { sheet: DraftSheet }) {
  const [system] = useUnitSystem()
  const { district, pump, pumper, place, required } = sheet
  const suction = useMemo(() => ratedSuction(pumper.rated_gpm).suction, [pumper])
  const byRating = useMemo<PumperHydraulics>(() => ({ rated_gpm: pumper.rated_gpm, ...(pumper.ratedLift_ft !== undefined && { ratedLift_ft: pumper.ratedLift_ft }) }), [pumper])
  const series = useMemo(() => {
    const line = (id: string, label: string, look: ChartSeries['look'], of: PumperHydraulics): ChartSeries => ({
      id, label, look,
      points: Array.from({ length: MOST_LIFT_FT * 2 + 1 }, (_, step) => [step / 2, draftCapacity({ pumper: of, suction, place: { ...place, lift_ft: step / 2 }, ask: { netPressure_psi: 0 } }).suctionSide_gpm] as const),
    })
    return [line('own', say('draft.tests.calibrated'), 'water', pumper), line('rating', say('draft.tests.by-rating'), 'dash', byRating)]
  }, [pumper, byRating, suction, place])
  const worst = Math.max(0, ...required.residualShares.map((share) => Math.abs(share ?? 0)))
  const rated = calibrateRequiredHead(byRating)
  const summary = required.basis === 'test-points'
    ? say('draft.tests.summary.points', { count: required.residualShares.length, worst: formatShare(worst, 1) })
    : say(`draft.tests.summary.${required.basis}`)
  return (
    <Card title={say('draft.tests')} summary={summary}>
      <ItemFields docId={district.id} docKind="district" collection="apparatus" item={pump}><PumpTests pump={pump} /></ItemFields>
      <LineChart
        title={say('draft.tests.heard', { pump: pump.name })} series={series}
        x={{ label: say('draft.lift'), unit: 'ft', most: MOST_LIFT_FT }}
        y={{ label: say('draft.tests.suction-side'), unit: 'gpm', most: Math.max(...series.flatMap(({ points }) => points.map(([, flow]) => flow))) * 1.05 }}
      />
      <p className={styles.quiet}>{say('draft.tests.note', { size: formatQuantity(suction.size_in, 'in', system), length: formatQuantity(suction.length_ft, 'ft', system), count: suction.lineCount })}</p>
      <p className={styles.quiet}>{say('draft.tests.ab', { a: formatQuantity(required.a_ft, 'ft', system), b: formatQuantity(required.b_ft, 'ft', system), ratedA: formatQuantity(rated.a_ft, 'ft', system), ratedB: formatQuantity(rated.b_ft, 'ft', system) })}</p>
    </Card>
  )
}
