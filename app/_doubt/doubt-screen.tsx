'use client'

import type { DoubtAnswer } from '@/lib/doubt'
import { isUnknownWater } from '@/lib/supply'
import { BeingWorkedOut } from '../_plan/being-worked-out'
import { PlanStudy, type Study } from '../_plan/plan-study'
import { formatAsked, formatGiven, formatMinutes, formatShare, listWords, say, sayIssue } from '../_text'
import { Button } from '../_ui/button'
import { EmptyState } from '../_ui/empty-state'
import { FigureTile } from '../_ui/figure-tile'
import { ProgressBar } from '../_ui/progress-bar'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useDoubt } from '../_worker'
import { DoubtCharts } from './doubt-charts'
import shared from '../_look/shared.module.css'
import styles from './doubt.module.css'
import { RankingList } from './ranking-list'

/** How sure the answer to a plan is, what that hangs on, and what to go and measure. */
export function DoubtScreen({ districtId, planId }: { districtId: string; planId: string }) {
  return <PlanStudy districtId={districtId} planId={planId} page="doubt">{(study) => <DoubtStudy {...study} />}</PlanStudy>
}

function DoubtStudy({ board, answer, bundle }: Study) {
  const { result, names } = board
  const [system] = useUnitSystem()
  const isBlocked = result !== undefined && !answer.pending.answer && result.sustainable_gpm === null
  const doubt = useDoubt(isBlocked ? undefined : bundle)
  if (isBlocked) return <EmptyState title={say('doubt.blocked')} text={say('doubt.blocked.text')} />
  return (
    <div className={styles.study}>
      <div className={styles.head}>
        <h2 className={styles.title}>{say('doubt.title')}</h2>
        <p className={styles.quiet}>{say('doubt.about')}</p>
      </div>
      {!bundle && !doubt.answer && answer.pending.answer && <BeingWorkedOut />}
      {doubt.issue && <p role="alert">{sayIssue(doubt.issue, names, system)}</p>}
      {doubt.progressShare !== undefined && <ProgressBar label={say('doubt.working-on')} share={doubt.progressShare} onCancel={doubt.stop} />}
      {doubt.progressShare === undefined && !doubt.issue && (!doubt.answer || doubt.isOld) && bundle && (
        <div className={shared.screenOnly}><Button look="primary" label={say('doubt.start')} onClick={doubt.start} /></div>
      )}
      {doubt.answer && doubt.isOld && <p className={styles.quiet}>{say('doubt.is-old')}</p>}
      {doubt.answer && <Found answer={doubt.answer} study={{ board, answer, bundle }} />}
      <p className={styles.quiet}>{say('doubt.caution')}</p>
    </div>
  )
}

function Found({ answer, study: { board } }: { answer: DoubtAnswer; study: Study }) {
  const [system] = useUnitSystem()
  const needed_gpm = board.result?.needed_gpm ?? null
  const { dependable, expected_gpm, planned, supplyReady, blockedShare } = answer
  const unknown = [...new Set((board.result?.issues ?? []).filter(isUnknownWater).map(({ subjectIds: [id = ''] }) => board.names(id) ?? id))]
  const flow = (value: number) => formatGiven(value, system, needed_gpm)
  const minutes = (time_s: number) => (Number.isFinite(time_s) ? formatMinutes(time_s, 'up') : say('plan.never'))
  // A band without a width is one number.
  const hasWidth = minutes(supplyReady.low_s) !== minutes(supplyReady.high_s)
  return (
    <>
      <div className={styles.tiles}>
        <FigureTile
          label={say('doubt.dependable', { share: formatShare(dependable.share) })} value={flow(dependable.flow_gpm)} look="water"
          note={say('doubt.dependable.note', { error: formatShare(dependable.shareError, 1), low: flow(dependable.low_gpm) === flow(dependable.high_gpm) ? 'same' : flow(dependable.low_gpm), high: flow(dependable.high_gpm) })}
        />
        <FigureTile label={say('doubt.expected')} value={flow(expected_gpm)} note={say('doubt.expected.note')} />
        {needed_gpm !== null && <FigureTile label={say('result.figure.needed_gpm')} value={formatAsked(needed_gpm, system)} />}
        {planned && (
          <FigureTile
            label={say('doubt.met')} value={formatShare(planned.metShare)} look={planned.metShare < dependable.share ? 'amber' : 'plain'}
            note={planned.metError > 0 ? say('doubt.met.note', { error: formatShare(planned.metError, 1) }) : say(planned.metShare > 0 ? 'doubt.met.all' : 'doubt.met.none', { count: answer.nightCount })}
          />
        )}
        <FigureTile
          label={say('result.figure.supplyReady_s')} value={hasWidth ? say('doubt.from-to', { low: minutes(supplyReady.low_s), high: minutes(supplyReady.high_s) }) : minutes(supplyReady.high_s)}
          note={supplyReady.neverShare > 0 ? say('doubt.ready.never', { share: formatShare(supplyReady.neverShare) }) : say(hasWidth ? 'doubt.ready.note' : 'doubt.ready.always')}
          look={supplyReady.neverShare > 0 ? 'amber' : 'plain'}
        />
      </div>
      {blockedShare > 0 && <p>{say('doubt.no-answer-nights', { share: formatShare(blockedShare) })}</p>}
      <h3>{say('doubt.measure.title')}</h3>
      <p className={styles.quiet}>{say('doubt.measure.about')}</p>
      {unknown.length > 0 && <p className={styles.first}>{say('doubt.measure.water', { sources: listWords(unknown) })}</p>}
      <div className={styles.rankings}>
        <RankingList title={say('doubt.measure.flow')} ranking={answer.ofFlow} />
        <RankingList title={say('doubt.measure.ready')} ranking={answer.ofReady} />
      </div>
      <h3>{say('doubt.charts.title')}</h3>
      <DoubtCharts answer={answer} needed_gpm={needed_gpm} names={board.names} />
      <p className={styles.quiet}>{say('doubt.nights', { count: answer.nightCount, seed: String(answer.seed) })}</p>
    </>
  )
}
