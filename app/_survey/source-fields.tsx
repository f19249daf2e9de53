'use client'

import { sourceKinds, type Source } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { useItem } from '../_fields/item-context'
import { choiceLabel } from '../_fields/choice-label'
import { ItemQuantity, ItemText } from '../_fields/item-inputs'
import { formatAbout, formatQuantity, inUnits, say } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { Caution } from '../_ui/caution'
import { ChoiceField } from '../_ui/choice-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import { ComputedRow } from './computed-row'
import { findFloatFlow_gpm, findHydrantFlow_gpm, findLensVolume_gal, findPondVolume_gal } from './known-water'
import { SourceGaps } from './source-gaps'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

/** What is known of a source: only what its kind has. */
export function SourceFields({ source }: { source: Source }) {
  const { edit, district } = useSurvey()
  const { kind } = source
  const changeKind = (next: Source['kind'] | undefined) => {
    // A kind stands for life in edits of fields; the whole item in its place keeps its id and all that is known.
    if (next && next !== kind) edit({ kind: 'addItem', collection: 'sources', item: { ...source, kind: next } }, say('entry.changed', { field: say('survey.source-kind') }))
  }
  return (
    <>
      <ChoiceField label={say('survey.source-kind')} choices={sourceKinds.map((value) => ({ value, label: choiceLabel('kind', value) }))} value={kind} onCommit={changeKind} />
      <SourceGaps source={source} />
      {kind === 'pressureHydrant' ? <HydrantTest source={source} /> : <OpenWater source={source} />}
      <ItemText field="testedOn" isDay />
      {(kind === 'dryHydrant' || kind === 'cistern' || kind === 'pressureHydrant') && <ItemText field="inspectionDue" isDay />}
      {kind !== 'pressureHydrant' && <ItemText field="certifiedOn" isDay />}
      {kind !== 'pressureHydrant' && <ItemQuantity field="water_degF" standIn={district.water_degF === undefined ? defaults.water_degF : { value: district.water_degF, mark: 'computed', source: say('survey.from-district') }} />}
      <ItemText field="access" isLong />
      {kind !== 'pressureHydrant' && <Banks source={source} />}
      <Caution kinds={kind === 'pressureHydrant' ? ['cross-connection'] : ['banks']} />
    </>
  )
}

function OpenWater({ source }: { source: Source }) {
  const { set } = useItem()
  const [system] = useUnitSystem()
  const { kind } = source
  const hasSurface = kind === 'pond' || kind === 'lake' || kind === 'dryHydrant'
  const lens_gal = findLensVolume_gal(source)
  const all_gal = kind === 'pond' ? findPondVolume_gal(source) : undefined
  const float_gpm = findFloatFlow_gpm(source)
  return (
    <>
      <ItemQuantity field="usable_gal" standIn={hasSurface && lens_gal !== undefined ? { value: Number(lens_gal.toPrecision(3)), mark: 'computed', source: say('survey.lens.how') } : undefined} />
      {hasSurface && (
        <>
          <ItemQuantity field="surface_sqft" />
          <ItemQuantity field="usableDepth_ft" hint={say('survey.usable-depth.hint')} />
          <ItemQuantity field="deepest_ft" />
          {lens_gal !== undefined && (
            <ComputedRow
              label={say('survey.lens')} value={formatAbout(lens_gal, 'gal', system)} how={say('survey.lens.how')}
              {...(source.usable_gal !== undefined && { onUse: () => { set({ usable_gal: undefined }, { usable_gal: undefined }, say('survey.use-figure')) } })}
            />
          )}
          {all_gal !== undefined && <ComputedRow label={say('survey.pond')} value={formatAbout(all_gal, 'gal', system)} how={say('survey.pond.how')} />}
        </>
      )}
      {kind === 'stream' && (
        <fieldset className={styles.part}>
          <legend className={styles.legend}>{say('survey.float')}</legend>
          <div className={styles.fields}>
            <p className={styles.quiet}>{inUnits(say('survey.float.text'), system)}</p>
            <ItemQuantity field="streamWidth_ft" />
            <ItemQuantity field="streamDepth_ft" />
            <ItemQuantity field="floatReach_ft" />
            <ItemQuantity field="float_s" />
            {float_gpm !== undefined && (
              <ComputedRow
                label={say('survey.float.flow')} value={formatQuantity(float_gpm, 'gpm', system, { style: 'headline', toward: 'down' })} how={say('survey.float.how')}
                {...(source.inflow_gpm !== undefined && { onUse: () => { set({ inflow_gpm: undefined }, { inflow_gpm: undefined }, say('survey.use-figure')) } })}
              />
            )}
          </div>
        </fieldset>
      )}
      <ItemQuantity field="inflow_gpm" standIn={kind === 'stream' && float_gpm !== undefined ? { value: Number(float_gpm.toPrecision(3)), mark: 'computed', source: say('survey.float.how') } : undefined} />
      <ItemQuantity field="surfaceElevation_ft" />
      {kind !== 'cistern' && <ItemQuantity field="seasonalDrop_ft" />}
      {kind !== 'cistern' && <ItemQuantity field="droughtDrop_ft" />}
    </>
  )
}

function HydrantTest({ source }: { source: Source }) {
  const [system] = useUnitSystem()
  const flow_gpm = findHydrantFlow_gpm(source)
  const isOff = source.static_psi !== undefined && source.residual_psi !== undefined && source.static_psi <= source.residual_psi
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>{say('survey.hydrant')}</legend>
      <div className={styles.fields}>
        <ItemQuantity field="static_psi" />
        <ItemQuantity field="residual_psi" />
        <ItemQuantity field="test_gpm" />
        {flow_gpm !== undefined && <ComputedRow label={say('survey.hydrant.flow', { pressure: formatQuantity(20, 'psi', system) })} value={formatQuantity(flow_gpm, 'gpm', system, { style: 'headline', toward: 'down' })} how={say('survey.hydrant.how')} />}
        {isOff && <p className={styles.wrong}>{say('survey.hydrant.wrong')}</p>}
      </div>
    </fieldset>
  )
}

/** Where one can draft from it. */
function Banks({ source }: { source: Source }) {
  const { district, select, place, placing } = useSurvey()
  const banks = district.draftSites.filter(({ sourceId }) => sourceId === source.id)
  const isPlacing = placing?.sourceId === source.id
  return (
    <div className={styles.links}>
      <p className={styles.legend}>{say('survey.banks', { count: banks.length })}</p>
      {banks.map(({ id, name }) => <Button key={id} size="s" look="quiet" iconAfter="arrowRight" label={name} onClick={() => { select(id) }} />)}
      <Button size="s" look={isPlacing ? 'primary' : 'plain'} icon="add" aria-pressed={isPlacing} label={say('survey.place-bank')} onClick={() => { place(isPlacing ? undefined : { kind: 'draftSite', sourceId: source.id }) }} />
    </div>
  )
}
