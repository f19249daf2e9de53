'use client'

import { STANDARD_BAROMETER_INHG, type StrainerKind } from '@/lib/hydraulics'
import { intakePlaces, seasons, strainerKinds, type Suction } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { formatQuantity, say } from '../_text'
import '../_text/areas/draft'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { QuantityField } from '../_ui/quantity-field'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'
import { isFallUnknown, seasonText } from './season-words'
import { TryField } from './try-field'
import type { DraftBoard } from './use-draft-sheet'

/** Pumper, season, set-up, air and water: what the answers beside it are for. */
export function SheetControls({ board }: { board: DraftBoard }) {
  const [system] = useUnitSystem()
  const { pumps, pump, pumperFrom, sheet, trial, district, attempt, choosePump, reset } = board
  const source = sheet?.source
  const own = sheet?.suction
  const setSuction = (part: Partial<Suction>) => {
    if (own) attempt({ suction: { size_in: own.size_in, length_ft: own.length_ft, lineCount: own.lineCount, strainer: own.strainer ?? 'barrel', intake: own.intake ?? 'side', ...part } })
  }
  const usual_ft = sheet ? sheet.lift.lift_ft - sheet.lift.drop_ft : undefined
  return (
    <aside className={styles.controls} aria-label={say('draft.controls')}>
      <ChoiceField
        label={say('draft.pumper')} value={pump?.id as string | undefined} onCommit={choosePump}
        choices={pumps.map(({ id, name, rated_gpm }) => ({ value: id as string, label: rated_gpm === undefined ? name : say('draft.pumper.choice', { name, rated: formatQuantity(rated_gpm, 'gpm', system) }) }))}
      />
      {pumperFrom.from !== 'asked' && pump && <p className={styles.quiet} role="status">{pumperFrom.from === 'plan' ? say('draft.pumper.from.plan', { plan: pumperFrom.planName ?? '' }) : say('draft.pumper.from.first')}</p>}
      <Segments
        label={say('draft.season')} value={trial.season ?? sheet?.drop.season ?? 'usual'} onCommit={(season) => { attempt({ season }) }}
        choices={seasons.map((value) => ({ value, label: say(`choice.season.${value}`) }))}
      />
      {sheet && <p className={isFallUnknown(sheet) ? styles.alert : styles.quiet} role="status">{seasonText(sheet, system)}</p>}
      <TryField label={say('draft.lift')} unit="ft" value={trial.lift_ft} known={usual_ft ?? 0} min={-20} max={45} step={0.5} onTry={(lift_ft) => { attempt({ lift_ft }) }} hint={say('draft.lift.hint')} />
      {own && (
        <fieldset className={styles.set}>
          <legend className={styles.legend}>{say('draft.setup')}</legend>
          <QuantityField label={say('draft.setup.size')} unit="in" value={own.size_in} hasMark={false} min={1.5} max={10} isRequired onCommit={({ value }) => { if (value !== undefined) setSuction({ size_in: value }) }} />
          <QuantityField label={say('draft.setup.length')} unit="ft" value={own.length_ft} hasMark={false} min={0} max={300} isRequired onCommit={({ value }) => { if (value !== undefined) setSuction({ length_ft: value }) }} />
          <Segments label={say('draft.setup.count')} value={String(own.lineCount)} choices={['1', '2'].map((value) => ({ value, label: value }))} onCommit={(value) => { setSuction({ lineCount: Number(value) }) }} />
          {own.dryHydrant
            ? <p className={styles.quiet}>{say('draft.setup.own-hydrant', { pipe: formatQuantity(own.dryHydrant.pipe_in, 'in', system), length: formatQuantity(own.dryHydrant.length_ft, 'ft', system), right: own.dryHydrant.elbow90Count ?? 0, slight: own.dryHydrant.elbow45Count ?? 0 })}</p>
            : <ChoiceField<StrainerKind> label={say('draft.setup.strainer')} value={own.strainer ?? 'barrel'} choices={strainerKinds.map((value) => ({ value, label: say(`choice.strainer.${value}`) }))} onCommit={(value) => { if (value) setSuction({ strainer: value }) }} />}
          <ChoiceField label={say('draft.setup.intake')} value={own.intake ?? 'side'} choices={intakePlaces.map((value) => ({ value, label: say(`choice.intake.${value}`) }))} onCommit={(value) => { if (value) setSuction({ intake: value }) }} />
        </fieldset>
      )}
      <fieldset className={styles.set}>
        <legend className={styles.legend}>{say('draft.air')}</legend>
        <TryField label={say('draft.altitude')} unit="ft" value={trial.altitude_ft} known={district?.altitude_ft ?? defaults.altitude_ft.value} min={0} max={10_000} step={100} onTry={(altitude_ft) => { attempt({ altitude_ft }) }} />
        <TryField label={say('draft.barometer')} unit="inHg" value={trial.barometer_inHg} known={district?.barometer_inHg ?? STANDARD_BAROMETER_INHG} min={27} max={31.5} step={0.05} onTry={(barometer_inHg) => { attempt({ barometer_inHg }) }} hint={say('draft.barometer.hint')} />
        <TryField label={say('draft.water')} unit="degF" value={trial.water_degF} known={source?.water_degF ?? district?.water_degF ?? defaults.water_degF.value} min={33} max={120} step={1} onTry={(water_degF) => { attempt({ water_degF }) }} />
        <TryField label={say('draft.net')} unit="psi" value={trial.netPressure_psi} known={150} min={0} max={250} step={5} onTry={(netPressure_psi) => { attempt({ netPressure_psi }) }} hint={say('draft.net.hint')} />
      </fieldset>
      <Button label={say('draft.reset')} icon="undo" onClick={reset} />
    </aside>
  )
}
