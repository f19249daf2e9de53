'use client'

import { useMemo, useState } from 'react'
import { drawdown, highestLiftFor_ft, leftAfter_gal } from '@/lib/hydraulics'
import type { Source } from '@/lib/plan'
import { explainHydrant, explainInflow, explainLasts, explainVolume, type DraftSheet } from '@/lib/supply'
import { LineChart } from '../_charts/line-chart'
import { SourceGaps } from '../_survey/source-gaps'
import { formatAbout, formatAsked, formatGiven, formatQuantity, formatUntil, inUnits, say, type NameOf } from '../_text'
import '../_text/areas/draft'
import { Card } from '../_ui/card'
import { FigureGroup, type FigureEntry } from '../_ui/figure-group'
import { QuantityField } from '../_ui/quantity-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'
import { SourceFacts } from './source-facts'

/** A run is drawn no longer than this, however long the water lasts. */
const MOST_S = 12 * 3600
const LEAST_S = 1800
/** A fall of the surface that a lift shows. */
const SEEN_FT = 0.05

/** What a pumper draws, as it is shown: nobody tries a flow to the single gpm. */
const wholeSteps_gpm = (flow_gpm: number): number => {
  const step = flow_gpm < 1000 ? 5 : 10
  return Math.floor(flow_gpm / step) * step
}

/** What the source holds, how it falls while it is drawn on, how long it lasts, and what is known of it. */
export function SourceCard({ sheet, source, names, planned_gpm }: { sheet: DraftSheet; source: Source; names: NameOf; planned_gpm: number | undefined }) {
  const [system] = useUnitSystem()
  const [typed_gpm, setTyped] = useState<number>()
  const { water, drop, capacity } = sheet
  const draw_gpm = typed_gpm ?? planned_gpm ?? wholeSteps_gpm(capacity.flow_gpm)
  const drawn = typed_gpm === undefined && planned_gpm === undefined ? formatGiven(draw_gpm, system) : formatAsked(draw_gpm, system)
  const usable_gal = water.usable_gal
  const found = useMemo(() => (usable_gal === undefined ? undefined : drawdown({ usable_gal, inflow_gpm: water.inflow_gpm ?? 0, draw_gpm, ...(source.surface_sqft !== undefined && source.surface_sqft > 0 && { surface_sqft: source.surface_sqft }) })), [usable_gal, water, draw_gpm, source])
  const lasts_s = found?.lasts_s
  const spare_ft = highestLiftFor_ft(sheet, draw_gpm) - sheet.place.lift_ft
  const lost_s = found?.fallPerHour_ft !== undefined && found.fallPerHour_ft > 0 && spare_ft > 0 ? (spare_ft / found.fallPerHour_ft) * 3600 : undefined
  const isAtMost = found !== undefined && lasts_s !== undefined && Math.abs(spare_ft) < SEEN_FT
  const isHydrant = source.kind === 'pressureHydrant'
  const figures: FigureEntry[] = [
    ...(isHydrant ? [{ id: 'hydrant', label: inUnits(say('draft.source.hydrant'), system), value: formatGiven(water.hydrant_gpm, system), look: 'water' as const, getWorking: () => explainHydrant(source, water) }] : []),
    ...(usable_gal !== undefined && water.volumeFrom !== 'stream' ? [{ id: 'usable', label: say('draft.source.usable'), value: formatAbout(usable_gal, 'gal', system), look: usable_gal > 0 ? 'water' as const : 'danger' as const, note: say(`choice.season.${drop.counted}`), getWorking: () => explainVolume(source, water, drop) }] : []),
    ...(isHydrant ? [] : [{ id: 'inflow', label: say(source.kind === 'stream' ? 'draft.source.stream' : 'draft.source.inflow'), value: formatGiven(water.inflow_gpm, system), getWorking: () => explainInflow(source, water, drop) }]),
    ...(found && usable_gal !== undefined ? [{
      id: 'lasts', label: say('draft.source.lasts'), value: lasts_s === undefined ? say('draft.source.holds') : formatUntil(lasts_s),
      look: lasts_s !== undefined && lasts_s < 7200 ? 'amber' as const : 'plain' as const, note: say('draft.source.at', { flow: drawn }),
      getWorking: () => explainLasts(source, water, drop, draw_gpm, found),
    }] : []),
    ...(found?.fallPerHour_ft !== undefined && found.fallPerHour_ft > 0 ? [{ id: 'fall', label: say('draft.source.fall'), value: formatQuantity(found.fallPerHour_ft, 'ft', system, { digits: found.fallPerHour_ft < 0.095 ? 2 : 1 }), note: say('draft.source.fall.note') }] : []),
  ]
  const end_s = Math.min(MOST_S, Math.max(LEAST_S, (lasts_s ?? 7200) * 1.15))
  return (
    <Card title={say('draft.source', { name: source.name })} summary={summaryOf()} startsOpen>
      <div className={styles.narrow}>
        <QuantityField label={say('draft.source.flow')} unit="gpm" value={typed_gpm} hasMark={false} min={1} max={20_000} standIn={{ value: Math.round(draw_gpm), mark: 'computed' }} hint={say(typed_gpm !== undefined ? 'draft.source.flow.typed' : planned_gpm !== undefined ? 'draft.source.flow.planned' : 'draft.source.flow.capacity')} onCommit={({ value }) => { setTyped(value) }} />
      </div>
      <FigureGroup label={say('draft.source.figures')} figures={figures} names={names} />
      <SourceGaps source={source} />
      {source.kind === 'stream' && water.inflow_gpm !== undefined && <p className={styles.quiet}>{say(draw_gpm > water.inflow_gpm ? 'draft.source.stream.short' : 'draft.source.stream.enough', { flow: drawn, stream: formatGiven(water.inflow_gpm, system) })}</p>}
      {usable_gal !== undefined && usable_gal > 0 && found && (
        <LineChart
          title={say('draft.source.heard', { usable: formatAbout(usable_gal, 'gal', system), flow: drawn, lasts: lasts_s === undefined ? say('draft.source.holds') : formatUntil(lasts_s) })}
          x={{ label: say('draft.source.time'), unit: 's', most: end_s }} y={{ label: say('draft.source.left'), unit: 'gal', most: usable_gal * 1.1 }}
          series={[{
            id: 'left', label: say('draft.source.left'), look: 'water',
            points: [...new Set([...Array.from({ length: 61 }, (_, step) => (end_s * step) / 60), ...(lasts_s !== undefined && lasts_s < end_s ? [lasts_s] : [])])].sort((a, b) => a - b)
              .map((at_s) => [at_s, leftAfter_gal({ usable_gal, inflow_gpm: water.inflow_gpm ?? 0, draw_gpm }, at_s)] as const),
          }]}
          {...(lasts_s !== undefined && lasts_s < end_s && { site: { label: say('draft.source.empty-at', { time: formatUntil(lasts_s) }), value: formatUntil(lasts_s), x: lasts_s, y: 0 } })}
        />
      )}
      {(source.kind === 'pond' || source.kind === 'lake') && usable_gal !== undefined && usable_gal > 0 && <p className={styles.quiet}>{say('draft.source.banks')}</p>}
      {lost_s !== undefined && lasts_s !== undefined && lost_s < lasts_s && spare_ft >= SEEN_FT && <p className={styles.alert}>{say('draft.source.lost', { pump: sheet.pump.name, time: formatUntil(lost_s), fall: formatQuantity(spare_ft, 'ft', system) })}</p>}
      {isAtMost && <p className={styles.quiet}>{say('draft.source.at-most', { pump: sheet.pump.name })}</p>}
      {spare_ft <= -SEEN_FT && <p className={styles.alert}>{say('draft.source.over', { pump: sheet.pump.name, flow: drawn, most: formatGiven(capacity.flow_gpm, system) })}</p>}
      <SourceFacts sheet={sheet} source={source} />
    </Card>
  )

  function summaryOf(): string {
    const kind = say(`choice.kind.${source.kind}`)
    if (isHydrant) return kind
    if (usable_gal === undefined || !found) return say('draft.source.summary.unknown', { kind })
    if (lasts_s === undefined) return say('draft.source.summary.holds', { kind, flow: drawn })
    return say('draft.source.summary', { kind, time: formatUntil(lasts_s), flow: drawn })
  }
}
