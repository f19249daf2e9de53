'use client'

import { highestLiftFor_ft } from '@/lib/hydraulics'
import { explainAvailableHead, explainCover, explainDraw, explainGauge, explainLift, explainSuctionLoss, type DraftSheet } from '@/lib/supply'
import { formatQuantity, say, type NameOf } from '../_text'
import '../_text/areas/draft'
import { FigureGroup, type FigureEntry } from '../_ui/figure-group'
import { useUnitSystem } from '../_ui/unit-system-context'
import shared from '../_look/shared.module.css'
import styles from './draft.module.css'
import { isLiftAssumed, liftSum, liftText, placeDoubt } from './lift-words'
import { flowText, rangeText } from './sheet-words'

/** The sheet in a sentence, and its figures with their workings. */
export function SheetAnswer({ sheet, names }: { sheet: DraftSheet; names: NameOf }) {
  const [system] = useUnitSystem()
  const { capacity, pump, lift, draftSite } = sheet
  const cover = capacity.strainerCover
  const isImpossible = capacity.limitedBy === 'lift'
  const flow = flowText(capacity, system)
  const isPumpSide = capacity.limitedBy === 'pump'
  const most_ft = isPumpSide ? highestLiftFor_ft(sheet, capacity.flow_gpm) : capacity.zeroFlowLift_ft
  const under_ft = draftSite.strainerCover_ft === undefined ? undefined : draftSite.strainerCover_ft - lift.drop_ft
  const doubt = placeDoubt(sheet, system)
  const figures: FigureEntry[] = [
    { id: 'flow', label: say('draft.flow'), value: flow, look: isImpossible ? 'danger' : 'water', note: say(`draft.limit.${capacity.limitedBy}`), getWorking: () => explainDraw(sheet) },
    { id: 'lift', label: say('draft.lift'), value: formatQuantity(lift.lift_ft, 'ft', system), note: liftSum(sheet, system) ?? say(`draft.lift.${isLiftAssumed(sheet) ? 'assumed' : lift.from}`), ...(isLiftAssumed(sheet) && { mark: 'assumed' as const }), getWorking: () => explainLift(sheet) },
    { id: 'head', label: say('draft.head'), value: formatQuantity(capacity.availableHead_ft, 'ft', system), note: say('draft.head.note'), getWorking: () => explainAvailableHead(sheet) },
    ...(isImpossible ? [] : [
      { id: 'loss', label: say('draft.loss'), value: formatQuantity(capacity.suctionLoss_ft, 'ft', system), note: say('draft.loss.note'), getWorking: () => explainSuctionLoss(sheet, sheet) },
      { id: 'gauge', label: say('draft.gauge'), value: rangeText(capacity.vacuumLow_inHg, capacity.vacuumHigh_inHg, 'inHg', system), note: say('draft.gauge.note'), getWorking: () => explainGauge(sheet) },
    ]),
    ...(cover && !isImpossible ? [{
      id: 'cover', label: say('draft.cover'), value: formatQuantity(cover.advised_ft, 'ft', system),
      note: say('draft.cover.note', { rule: formatQuantity(cover.rule_ft, 'ft', system), vortex: formatQuantity(cover.vortex_ft, 'ft', system) }),
      ...(under_ft !== undefined && under_ft < cover.advised_ft && { look: 'amber' as const }),
      getWorking: () => explainCover(sheet, sheet),
    }] : []),
    { id: 'most', label: say(isPumpSide ? 'draft.highest' : 'draft.ends'), value: formatQuantity(most_ft, 'ft', system), note: say(isPumpSide ? 'draft.highest.note' : 'draft.ends.note') },
  ]
  return (
    <section className={styles.answer} aria-label={say('draft.answer')}>
      <h2 className={shared.heard}>{say('draft.answer')}</h2>
      <p className={styles.sentence} data-bad={isImpossible} aria-live="polite">
        {isImpossible
          ? say('draft.sentence.impossible', { pump: pump.name, lift: liftText(sheet, system), over: formatQuantity(capacity.overLift_ft, 'ft', system), most: formatQuantity(capacity.zeroFlowLift_ft, 'ft', system) })
          : say('draft.sentence', { pump: pump.name, flow, lift: liftText(sheet, system), limit: say(`draft.limits.${capacity.limitedBy}`), gauge: rangeText(capacity.vacuumLow_inHg, capacity.vacuumHigh_inHg, 'inHg', system) })}
        {doubt !== undefined && <>{' '}<span className={styles.doubt}>{doubt}</span></>}
      </p>
      {cover && under_ft !== undefined && !isImpossible && (
        <p className={styles.quiet}>{say(under_ft < cover.rule_ft ? 'draft.cover.short' : under_ft < cover.advised_ft ? 'draft.cover.between' : 'draft.cover.enough', { under: formatQuantity(Math.max(0, under_ft), 'ft', system), rule: formatQuantity(cover.rule_ft, 'ft', system), vortex: formatQuantity(cover.vortex_ft, 'ft', system) })}</p>
      )}
      <h3 className={shared.heard}>{say('draft.figures')}</h3>
      <FigureGroup label={say('draft.figures')} figures={figures} names={names} />
    </section>
  )
}
