'use client'

import { useMemo, useState } from 'react'
import type { ReactNode } from 'react'
import { createDrill, drillScenarios, getScenario, rigFrom, scenarioRig, type Drill, type DrillPumper, type DrillRig, type DrillSite, type ScenarioCode } from '@/lib/priming/drill'
import { formatQuantity, inUnits, say } from '../_text'
import '../_text/areas/drill'
import { Card } from '../_ui/card'
import { Caution } from '../_ui/caution'
import { joinClasses } from '../_ui/join-classes'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { AfterRun } from './after-run'
import styles from './drill.module.css'
import { KeptList } from './kept-list'
import { DRILL_MODEL, findRunAgain, readKeptRuns, useKeptRuns, writeKeptRuns, type KeptRun } from './kept-runs'
import { KeyList } from './key-list'
import { ModelNotes } from './model-notes'
import { PumperFields, type Figures } from './pumper-fields'
import { RunPanel } from './run-panel'

export type DrillScreenProps = {
  /** Pumper to practise with; what it does not say is assumed. */
  rig?: DrillPumper & { readonly name?: string }
  /** Draft site to practise at. */
  site?: DrillSite & { readonly name?: string }
  /** Where the pumper and the site are chosen, if there is a choice. */
  chooser?: ReactNode
  /** Address that takes back how a run went, where it is played for an exercise: primed after that time, or not. */
  backTo?: (primed_s: number | undefined) => string
}

type Phase = { readonly kind: 'choose' } | { readonly kind: 'run'; readonly drill: Drill } | { readonly kind: 'after'; readonly drill: Drill; readonly isKept: boolean }

/** The prime drill: choose, play, and see what each move did. */
export function DrillScreen({ rig = {}, site = {}, chooser, backTo }: DrillScreenProps) {
  const first: Figures = { pumper: rig, site }
  const [figures, setFigures] = useState<Figures>(first)
  const [phase, setPhase] = useState<Phase>({ kind: 'choose' })
  const [isBlind, setBlind] = useState(false)
  const kept = useKeptRuns()
  const [system] = useUnitSystem()
  const toast = useToast()
  const made = useMemo(() => makeRig(figures), [figures])

  const begin = (code: ScenarioCode, blind: boolean): void => {
    if (!made.rig) return
    setBlind(blind)
    setPhase({ kind: 'run', drill: createDrill(made.rig, getScenario(code)) })
    window.scrollTo({ top: 0 })
  }
  const keep = (drill: Drill, name: string, points: number): boolean => {
    const run: KeptRun = { id: crypto.randomUUID(), name, at: new Date().toISOString(), model: DRILL_MODEL, scenario: drill.scenario.code,
      pumper: figures.pumper, site: figures.site, moves: drill.moves.map(({ at_s, control, to }) => ({ at_s, control, to })), end_s: drill.state.time_s,
      gaveUp: drill.events.some(({ code }) => code === 'gave-up'), points }
    return writeKeptRuns([run, ...kept])
  }

  if (phase.kind === 'run') {
    return (
      <div className={joinClasses(styles.page, styles.running)}>
        <Facts drill={phase.drill} isBlind={isBlind} />
        <RunPanel key={phase.drill.scenario.code} drill={phase.drill} onOver={() => {
          setPhase({ kind: 'after', drill: phase.drill, isKept: false })
          window.scrollTo({ top: 0 })
        }} />
        <Card title={say('drill.keys')}><KeyList /></Card>
      </div>
    )
  }
  if (phase.kind === 'after') {
    const { drill, isKept } = phase
    return (
      <div className={styles.page}>
        <AfterRun
          drill={drill}
          {...(isKept ? {} : { onKeep: (name: string, points: number) => keep(drill, name, points) })}
          {...(backTo && !isKept && { backTo })}
          onAgain={() => { begin(drill.scenario.code, false) }}
          onOther={() => { setPhase({ kind: 'choose' }) }}
        />
      </div>
    )
  }
  return (
    <div className={styles.page}>
      <header className={styles.intro}>
        <h2 className={styles.title}>{say('drill.title')}</h2>
        <p>{say('drill.lead')}</p>
        <p><strong>{say('drill.task')}</strong></p>
      </header>
      {chooser}
      <section aria-labelledby="drill-pick">
        <h3 id="drill-pick" className={styles.heading}>{say('drill.pick')}</h3>
        <ul className={styles.scenarios}>
          {drillScenarios.map(({ code }) => (
            <li key={code}>
              <button type="button" className={styles.scenario} disabled={!made.rig} onClick={() => { begin(code, false) }}>
                <span className={styles.scenarioName}>{say(`drill.scenario.${code}`)}</span>
                <span className={styles.quiet}>{say(`drill.scenario.${code}.text`)}</span>
              </button>
            </li>
          ))}
          <li>
            <button type="button" className={styles.scenario} disabled={!made.rig} onClick={() => { begin(anyScenario(), true) }}>
              <span className={styles.scenarioName}>{say('drill.surprise')}</span>
              <span className={styles.quiet}>{say('drill.surprise.text')}</span>
            </button>
          </li>
        </ul>
      </section>
      <Card title={say('drill.pumper')} summary={rig.name !== undefined && site.name !== undefined ? say('drill.pumper.own', { pumper: rig.name, site: site.name }) : inUnits(say('drill.pumper.plausible'), system)}>
        <PumperFields figures={figures} problem={made.problem} onChange={setFigures} onReset={() => { setFigures(first) }} />
      </Card>
      <Card title={say('drill.keys')}><KeyList /></Card>
      <ModelNotes />
      {kept.length > 0 && (
        <KeptList
          runs={kept}
          onShow={(run) => {
            const drill = findRunAgain(run)
            if (drill) setPhase({ kind: 'after', drill, isKept: true })
            else toast({ text: say('drill.kept.other-model') })
          }}
          onDelete={(run) => {
            const putBack = () => { writeKeptRuns([...readKeptRuns(), run].sort((one, other) => other.at.localeCompare(one.at))) }
            if (writeKeptRuns(kept.filter(({ id }) => id !== run.id))) toast({ text: say('kit.deleted', { name: run.name }), onUndo: putBack })
          }}
        />
      )}
      <Caution title={say('caution.title')} kinds={['back-up-prime', 'planning-aid', 'banks', 'pressure']} />
    </div>
  )
}

function Facts({ drill, isBlind }: { drill: Drill; isBlind: boolean }) {
  const [system] = useUnitSystem()
  const { rig, scenario } = drill
  return (
    <header className={styles.facts}>
      <h2>{isBlind ? say('drill.scenario.unknown') : say(`drill.scenario.${scenario.code}`)}</h2>
      <p className={styles.task}>{say('drill.task')}</p>
      {!isBlind && <p>{say(`drill.scenario.${scenario.code}.text`)}</p>}
      <p className={styles.quiet}>
        {say('drill.facts', { lift: formatQuantity(rig.lift_ft, 'ft', system), depth: formatQuantity(rig.depth_ft, 'ft', system),
          tank: formatQuantity(scenario.start(rig).tankWater_gal, 'gal', system), full: formatQuantity(rig.tank_gal, 'gal', system) })}
      </p>
    </header>
  )
}

const anyScenario = (): ScenarioCode => drillScenarios[Math.floor(Math.random() * drillScenarios.length)]?.code ?? 'primer-works'

/** The rig of the figures, or why there is none; every scenario must stand on it. */
function makeRig({ pumper, site }: Figures): { readonly rig?: DrillRig; readonly problem?: string } {
  try {
    const rig = rigFrom(pumper, site)
    for (const scenario of drillScenarios) scenarioRig(rig, scenario)
    return { rig }
  } catch (error) {
    if (error instanceof RangeError) return { problem: error.message }
    throw error
  }
}
