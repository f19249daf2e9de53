'use client'

import { markOf } from '@/lib/evidence'
import { defaults, type FillSiteResult } from '@/lib/supply'
import { ratedSuction } from '@/lib/hydraulics'
import { findDraftingPump, type DraftSite, type FillSite } from '@/lib/plan'
import { ItemFields } from '../_fields/item-context'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { PartFields } from '../_fields/part-fields'
import { draftHref } from '../_links/draft-href'
import { formatGiven, formatQuantity, say } from '../_text'
import '../_text/areas/draft'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { Fold } from '../_ui/fold'
import type { StandIn } from '../_ui/typed-evidence'
import { useUnitSystem } from '../_ui/unit-system-context'
import { countSet } from './count-set'
import { DraftsAt } from './drafts-at'
import { FigureRow } from './figure-row'
import { liftWords } from './lift-words'
import styles from './planner.module.css'
import { usePlanBoard } from './plan-context'
import { UnitChoice } from './unit-choice'

const moreFields = ['suction', 'fillLine', 'discharge_psi', 'rate_gpm', 'setUp_s'] as const

/** Where tenders take water: which pumper drafts from what, through which hose. */
export function FillCard({ site }: { site: FillSite }) {
  const board = usePlanBoard()
  const { district, plan, result, editPlan, editBoth } = board
  const [system] = useUnitSystem()
  const found = result?.sites.find((one) => one.kind === 'fillSite' && one.id === site.id)
  const pump = findDraftingPump({ district }, site.pumperId)
  const rated = ratedSuction(pump?.rated_gpm ?? 1000).suction
  const flow = (value: number | null | undefined) => formatGiven(value, system)
  return (
    <ItemFields docId={plan.id} docKind="plan" collection="fillSites" item={site}>
      <div className={styles.fields}>
        <ItemText field="name" isRequired />
        <UnitChoice
          label={say('plan.pumper')} none={say('plan.pumper.none')} kind="pumper" value={site.pumperId}
          onChoose={(id, before) => {
            const body = { kind: 'setFields' as const, collection: 'fillSites', id: site.id, set: { pumperId: id ?? null } }
            editBoth({ district: before?.district ?? [], plan: [body] }, say('plan.pumper'))
          }}
        />
        <ItemChoice field="draftSiteId" label={say('plan.draftSite')} none={say('plan.draftSite.none')} choices={district.draftSites.map(({ id, name }) => ({ value: id as string, label: name }))} />
        <DraftsAt site={site} />
        {!site.draftSiteId && <ItemChoice field="sourceId" label={say('plan.source')} none={say('plan.source.none')} choices={district.sources.map(({ id, name }) => ({ value: id as string, label: name }))} />}
        {found?.kind === 'fillSite' && found.seasonDrop_ft ? <p className={styles.quiet}>{say('plan.lift.counted', { lift: liftWords(found, system) })}</p> : null}
        <ItemQuantity field="lift_ft" standIn={liftStandIn(district.draftSites.find(({ id }) => id === site.draftSiteId), found?.kind === 'fillSite' ? found : undefined)} />
        <ItemCount field="bayCount" standIn={1} />
        {(site.bayCount ?? 1) > 1 && <ItemChoice field="bayOrder" none={say('choice.bayOrder.together')} choices={(['together', 'oneAtATime'] as const).map((value) => ({ value, label: say(`choice.bayOrder.${value}`) }))} />}
        {found?.kind === 'fillSite' && found.bayOrders && (
          <div className={styles.figures}>
            <p className={styles.plainFigure}><span>{say('choice.bayOrder.together')}</span><span>{flow(found.bayOrders.together_gpm)}</span></p>
            <p className={styles.plainFigure}><span>{say('choice.bayOrder.oneAtATime')}</span><span>{flow(found.bayOrders.oneAtATime_gpm)}</span></p>
            <p className={styles.quiet}>{say(`plan.bay-order.${betterOrder(found.bayOrders)}`)}</p>
          </div>
        )}
        {found?.kind === 'fillSite' && (
          <div className={styles.figures}>
            <FigureRow figure={`site/${site.id}/draft_gpm`} label={say('plan.figure.draft')} value={flow(found.draft_gpm)} />
            <FigureRow figure={`site/${site.id}/bayRate_gpm`} label={say('plan.figure.rate')} value={flow(found.bayRate_gpm[0])} />
            {found.gaugeLow_inHg !== null && found.gaugeHigh_inHg !== null && (
              <p className={styles.plainFigure}><span>{say('plan.figure.gauge')}</span><span>{formatQuantity(found.gaugeLow_inHg, 'inHg', system)} – {formatQuantity(found.gaugeHigh_inHg, 'inHg', system)}</span></p>
            )}
          </div>
        )}
        {site.draftSiteId && <ButtonLink size="s" href={draftHref({ districtId: district.id, draftSiteId: site.draftSiteId, planId: plan.id, pumperId: site.pumperId })} label={say('draft.link')} iconAfter="arrowRight" />}
        <Fold title={say('plan.more-fields')} note={say('plan.more.fill')} setCount={countSet(site, moreFields)}>
          <PartFields label={say('plan.suction')} field="suction" part={site.suction} base={{ size_in: rated.size_in, length_ft: rated.length_ft }}>
            <ItemQuantity field="size_in" standIn={{ ...defaults.suctionSize_in, value: rated.size_in }} />
            <ItemQuantity field="length_ft" standIn={defaults.suctionLength_ft} />
            <ItemCount field="lineCount" standIn={1} />
            <ItemChoice field="strainer" none={say('choice.strainer.barrel')} choices={(['barrel', 'floating', 'low-level'] as const).map((value) => ({ value, label: say(`choice.strainer.${value}`) }))} />
            <ItemChoice field="intake" none={say('choice.intake.side')} choices={(['side', 'front', 'rear'] as const).map((value) => ({ value, label: say(`choice.intake.${value}`) }))} />
          </PartFields>
          <PartFields label={say('plan.fill-line')} field="fillLine" part={site.fillLine} base={{ size_in: defaults.fillLineSize_in.value, length_ft: defaults.fillLineLength_ft.value }}>
            <ItemQuantity field="size_in" standIn={defaults.fillLineSize_in} />
            <ItemQuantity field="length_ft" standIn={defaults.fillLineLength_ft} />
            <ItemCount field="lineCount" standIn={1} />
          </PartFields>
          <ItemQuantity field="discharge_psi" standIn={defaults.discharge_psi} />
          <ItemQuantity field="rate_gpm" hint={say('plan.hint.rate')} />
          <ItemQuantity field="setUp_s" standIn={defaults.fillSetUp_s} />
        </Fold>
        <Button
          look="danger" icon="trash" size="s" label={say('plan.remove-site', { name: site.name })}
          onClick={() => { editPlan({ kind: 'removeItem', collection: 'fillSites', id: site.id }, say('plan.remove-site', { name: site.name })) }}
        />
      </div>
    </ItemFields>
  )
}

/** Flows this close are the same for the choice. */
const SAME_FLOW_SHARE = 0.01

function betterOrder({ together_gpm, oneAtATime_gpm }: { together_gpm: number; oneAtATime_gpm: number }): 'same' | 'together' | 'oneAtATime' {
  if (Math.abs(together_gpm - oneAtATime_gpm) <= SAME_FLOW_SHARE * Math.max(together_gpm, oneAtATime_gpm)) return 'same'
  return together_gpm > oneAtATime_gpm ? 'together' : 'oneAtATime'
}

/** The lift that counts while the plan says none: the survey's, known as it is there, else what the elevations give. */
function liftStandIn(draftSite: DraftSite | undefined, found: FillSiteResult | undefined): StandIn {
  if (draftSite?.lift_ft !== undefined) return { value: draftSite.lift_ft, mark: markOf(draftSite.evidence, 'lift_ft'), source: say('plan.from-survey') }
  if (found?.liftFrom === 'elevations' && found.lift_ft !== null) return { value: found.lift_ft - (found.seasonDrop_ft ?? 0), mark: 'computed', source: say('draft.lift.known.elevations') }
  return defaults.lift_ft
}
