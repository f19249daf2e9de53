'use client'

import Link from 'next/link'
import { isUnknownWater } from '@/lib/supply'
import { planPageHref } from '../_links/plan-pages'
import type { PlanAnswerState } from '../_worker'
import { answerLines, formatGain, formatGiven, formatMinutes, formatShare, linkText, measureWords, neverEnoughWords, rangeWords, say, timeShown } from '../_text'
import { AnswerSentence } from '../_ui/answer-sentence'
import { useUnitSystem } from '../_ui/unit-system-context'
import { BeingWorkedOut } from './being-worked-out'
import { FigureRow } from './figure-row'
import { usePlanBoard } from './plan-context'
import { itemHref } from '../_links/screens'
import styles from './planner.module.css'

/** The answer as a sentence, always in sight; under it what to change and what to measure first. */
export function AnswerBar({ pending }: { pending: PlanAnswerState['pending'] }) {
  const { district, plan, result, isWorking, names } = usePlanBoard()
  const [system] = useUnitSystem()
  if (!result) return <AnswerSentence pending={isWorking ? say('plan.working-answer') : undefined}>{isWorking ? '' : say('result.blocked')}</AnswerSentence>
  const lines = answerLines(result, names, system)
  const alerts = lines.flatMap(({ look, text }) => (look === 'plain' ? [] : [{ look, text }]))
  const [link] = result.links
  const measure = result.firstToMeasure
  // What the whole flow stands on comes before any number that only widens it: no night draws water nobody knows.
  const unknown = result.issues.find(isUnknownWater)
  const isBlocked = result.issues.some(({ severity }) => severity === 'block')
  return (
    <AnswerSentence
      alerts={alerts}
      pending={pending.answer ? say('plan.working-anew') : pending.limitingLink && !isBlocked ? say('plan.working-on') : undefined}
      change={link && link.gain_gpm > 0 && (
        <>
          {say('plan.first-change', { link: linkText(link, names), gain: formatGain(result.sustainable_gpm ?? 0, (result.sustainable_gpm ?? 0) + link.gain_gpm, system) })}{' '}
          <Link href={planPageHref('advice', plan.districtId, plan.id)}>{say('plan.page.advice')}</Link>
        </>
      )}
      measure={unknown ? (
        <>
          {say('plan.first-measure.water', { kind: unknown.code === 'source-flow-unknown' ? 'flow' : 'volume', source: names(unknown.subjectIds[0] ?? '') ?? say('issue.unnamed') })}{' '}
          <Link href={itemHref('survey', district.id, unknown.subjectIds[0] ?? '')}>{say('plan.first-measure.water.enter')}</Link>
        </>
      ) : measure === null ? (result.dependable || isBlocked ? undefined : say('plan.first-measure.pending')) : (
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
  const { result, isWorking } = usePlanBoard()
  const [system] = useUnitSystem()
  if (isWorking) return <BeingWorkedOut />
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
        const { value, ask } = timeShown(figure, result)
        const note = ask ?? (figure === 'supplyReady_s' ? neverEnoughWords(result, system) : undefined)
        return <FigureRow key={figure} figure={figure} label={say(`result.figure.${figure}`)} value={value} {...(note !== undefined && { note })} look={figure === 'gap_s' && result.gap_s ? 'danger' : 'plain'} />
      })}
    </div>
  )
}
