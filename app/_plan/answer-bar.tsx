'use client'

import Link from 'next/link'
import type { PlanAnswerState } from '../_worker'
import { answerLines, formatChange, formatGiven, formatMinutes, formatShare, linkText, measureWords, rangeWords, say, timeWords } from '../_text'
import { AnswerSentence } from '../_ui/answer-sentence'
import { useUnitSystem } from '../_ui/unit-system-context'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import { planPageHref } from './plan-pages'
import styles from './planner.module.css'

/** The answer as a sentence, always in sight; under it what to change and what to measure first. */
export function AnswerBar({ pending }: { pending: PlanAnswerState['pending'] }) {
  const { plan, result, names } = usePlanBoard()
  const [system] = useUnitSystem()
  if (!result) return <AnswerSentence>{pending.answer ? say('plan.loading') : say('result.blocked')}</AnswerSentence>
  const lines = answerLines(result, names, system)
  const alerts = lines.flatMap(({ look, text }) => (look === 'plain' ? [] : [{ look, text }]))
  const [link] = result.links
  const measure = result.firstToMeasure
  const isBlocked = result.issues.some(({ severity }) => severity === 'block')
  return (
    <AnswerSentence
      alerts={alerts}
      pending={pending.answer || (pending.limitingLink && !isBlocked) ? say('plan.working-on') : undefined}
      change={link && link.gain_gpm > 0 && (
        <>
          {say('plan.first-change', { link: linkText(link, names), gain: formatChange(result.sustainable_gpm ?? 0, (result.sustainable_gpm ?? 0) + link.gain_gpm, system) })}{' '}
          <Link href={planPageHref('advice', plan.districtId, plan.id)}>{say('plan.page.advice')}</Link>
        </>
      )}
      measure={measure === null ? (result.dependable || isBlocked ? undefined : say('plan.first-measure.pending')) : (
        <>
          {say('plan.first-measure', { what: measureWords(measure, names), range: rangeWords(measure, system), share: formatShare(measure.share) })}{' '}
          <Link href={planPageHref('doubt', plan.districtId, plan.id)}>{say('plan.page.doubt')}</Link>
        </>
      )}
    >
      {isBlocked ? say('plan.blocked-hint') : lines.filter(({ look }) => look === 'plain').map(({ text }) => text).join(' ')}
    </AnswerSentence>
  )
}

const flows = ['sustainable_gpm', 'stored_gpm', 'hauledCapacity_gpm', 'hand_gpm'] as const
const times = ['firstWater_s', 'tankEmpty_s', 'supplyReady_s', 'gap_s', 'short_s'] as const

/** Every figure of the answer, each opening its working. */
export function Figures() {
  const { result } = usePlanBoard()
  const [system] = useUnitSystem()
  if (!result || result.sustainable_gpm === null) return <p className={styles.quiet}>{say('plan.chart.none')}</p>
  return (
    <div className={styles.figures}>
      {flows.map((figure) => {
        const value = result[figure]
        return (
          <FigureRow
            key={figure} figure={figure} label={say(`result.figure.${figure}`, { duration: formatMinutes(result.duration_s) })} note={say(`result.note.${figure}`)}
            look={figure === 'sustainable_gpm' ? 'water' : 'plain'} value={formatGiven(value, system, result.needed_gpm)}
          />
        )
      })}
      {times.map((figure) => {
        const value = result[figure]
        return <FigureRow key={figure} figure={figure} label={say(`result.figure.${figure}`)} value={value === null ? say('plan.never') : timeWords(figure, result)} look={figure === 'gap_s' && value ? 'danger' : 'plain'} />
      })}
    </div>
  )
}
