'use client'

import Link from 'next/link'
import { useState } from 'react'
import { rankTrials, type Advice, type RankOrder, type Trial } from '@/lib/advise'
import { planPageHref } from '../_links/plan-pages'
import type { Study } from '../_plan/plan-study'
import { PlanStudy } from '../_plan/plan-study'
import { formatGiven, formatSignedChange, say } from '../_text'
import '../_text/areas/advice'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { EmptyState } from '../_ui/empty-state'
import { IssueList } from '../_ui/issue-list'
import { ProgressBar } from '../_ui/progress-bar'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useAdvice, type AdviceState } from '../_worker'
import styles from './advice.module.css'
import { ChangeItem } from './change-item'
import { changeText } from './change-text'
import { toMeetText } from './to-meet-text'
import { StopsPart } from './stops-part'
import { unprovenLead } from './unproven-text'
import { useApply, type Apply } from './use-apply'

/** "What would help": changes that the district's own equipment allows, and what is left if something stops. */
export function AdviceScreen({ districtId, planId }: { districtId: string; planId: string }) {
  return <PlanStudy districtId={districtId} planId={planId} page="advice">{(study) => <AdviceStudy study={study} />}</PlanStudy>
}

function AdviceStudy({ study }: { study: Study }) {
  const { board, bundle, answer } = study
  const state = useAdvice(bundle)
  const apply = useApply(board, 'advice')
  const isBlocked = answer.result?.issues.some(({ severity }) => severity === 'block') && !answer.pending.answer
  if (state.failure) return <IssueList issues={[state.failure]} names={board.names} />
  if (isBlocked || state.advice === null) return <EmptyState title={say('advice.blocked')} text={say('advice.blocked.text')} />
  return (
    <>
      <section className={styles.part} aria-labelledby="advice-title">
        <h2 id="advice-title" className={styles.title}>{say('advice.title')}</h2>
        <p className={styles.lead}>{say('advice.lead')}</p>
        <Work state={state} />
        {state.advice && <Changes advice={state.advice} state={state} study={study} apply={apply} />}
      </section>
      {state.advice && (
        <section className={styles.part} aria-labelledby="advice-stops">
          <h2 id="advice-stops" className={styles.title}>{say('advice.stops')}</h2>
          <StopsPart stops={state.advice.stops} dependable_gpm={answer.result?.dependable?.flow_gpm ?? state.dependable?.base_gpm} names={board.names} />
        </section>
      )}
    </>
  )
}

function Work({ state }: { state: AdviceState }) {
  if (state.state === 'working') return <ProgressBar label={say(state.stage === 'trying' ? 'advice.working' : 'advice.doubting')} share={state.doneShare} onCancel={state.stop} />
  if (state.state !== 'stopped' || state.advice) return null
  return <div className={styles.actions}><span>{say('advice.stopped')}</span><Button size="s" label={say('advice.again')} onClick={state.again} /></div>
}

function Changes({ advice, state, study: { board }, apply }: { advice: Advice; state: AdviceState; study: Study; apply: Apply }) {
  const [order, setOrder] = useState<RankOrder>('perEffort')
  const [system] = useUnitSystem()
  const { helpful, unproven, idle } = rankTrials([...advice.ranked.helpful, ...advice.ranked.unproven, ...advice.ranked.idle], order)
  const blockedCount = advice.untried.filter(({ because }) => because !== 'roads-unknown').length
  const most_gpm = Math.max(1, ...[...helpful, ...unproven].map(({ gain_gpm }) => gain_gpm))
  const best_gpm = Math.max(0, ...[...helpful, ...unproven].map(({ after }) => after.flow_gpm))
  const isOpen = advice.needed_gpm !== undefined && Math.max(advice.base.flow_gpm, best_gpm) < advice.needed_gpm
  const hoseHref = planPageHref('hose', board.plan.districtId, board.plan.id)
  const items = (trials: readonly Trial[], label: string) => (
    <ol className={styles.list} aria-label={label}>
      {trials.map((trial) => <ChangeItem key={trial.candidate.id} trial={trial} most_gpm={most_gpm} board={board} advice={advice} dependable={state.dependable} apply={apply} />)}
    </ol>
  )
  return (
    <>
      <div className={styles.head}>
        <Segments label={say('advice.order')} value={order} onCommit={setOrder} choices={[{ value: 'perEffort', label: say('advice.order.perEffort') }, { value: 'gain', label: say('advice.order.gain') }]} />
        <p className={styles.quiet}>{say('advice.tried', { count: advice.triedCount })} {say('advice.effort.assumed')} {say('advice.not-tried')} {!isOpen && <Link href={hoseHref}>{say('advice.not-tried.link', { page: say('plan.page.hose') })}</Link>}</p>
      </div>
      {isOpen && <p className={styles.recommend}><Link href={hoseHref}>{say('advice.hose-may', { page: say('plan.page.hose') })}</Link></p>}
      {advice.toMeet && (
        <p className={styles.recommend}>
          {toMeetText(advice.toMeet, 'advice.to-meet', board.district, board.names, system, advice.limit)}
          {advice.toMeet.count === null && best_gpm > advice.toMeet.flow_gpm && ` ${say('advice.to-meet.more-below', { flow: formatGiven(best_gpm, system, advice.needed_gpm) })}`}
        </p>
      )}
      {helpful.length > 0 ? items(helpful, say('advice.list')) : <p>{say('advice.none')}</p>}
      {unproven.length > 0 && (
        <>
          <h3 className={styles.subtitle}>{say('advice.unproven')}</h3>
          <p className={styles.quiet}>{unprovenLead(unproven)}</p>
          {items(unproven, say('advice.unproven'))}
        </>
      )}
      {idle.length > 0 && (
        <Card title={say('advice.idle')} summary={say('advice.idle.summary', { count: idle.length })}>
          <p className={styles.quiet}>{say('advice.idle.text')}</p>
          {blockedCount > 0 && <p className={styles.quiet}>{say('advice.idle.blocked', { count: blockedCount })}</p>}
          <ul className={styles.idle}>
            {idle.map(({ candidate, before, after, gain_gpm }) => (
              <li key={candidate.id}>
                <span>{changeText(candidate, board.names, system)}</span>
                <span className={styles.quiet}>{gain_gpm > -0.5 ? say('advice.gain.none') : say('advice.loss', { loss: formatSignedChange(before.flow_gpm, after.flow_gpm, system) })}</span>
              </li>
            ))}
          </ul>
        </Card>
      )}
      <Untried advice={advice} />
    </>
  )
}

function Untried({ advice }: { advice: Advice }) {
  const count = advice.untried.filter(({ because }) => because === 'roads-unknown').length
  return count > 0 ? <p className={styles.quiet}>{say('advice.untried', { count })}</p> : null
}
