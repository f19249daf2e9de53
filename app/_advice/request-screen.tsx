'use client'

import { useRef, useState } from 'react'
import type { RequestAsk, RequestList } from '@/lib/advise'
import { FIRE_GROUND } from '@/lib/supply'
import { BeingWorkedOut } from '../_plan/being-worked-out'
import { PlanStudy, type Study } from '../_plan/plan-study'
import { formatAsked, formatFrom, formatGiven, formatMinutes, formatShortBy, listWords, say } from '../_text'
import '../_text/areas/advice'
import { Button } from '../_ui/button'
import { Caution } from '../_ui/caution'
import { DataTable } from '../_ui/data-table'
import { EmptyState } from '../_ui/empty-state'
import { IssueList } from '../_ui/issue-list'
import { ProgressBar } from '../_ui/progress-bar'
import { QuantityField } from '../_ui/quantity-field'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useRequest } from '../_worker'
import styles from './advice.module.css'
import { copyText } from './copy-text'
import { requestText, stationText, taskText } from './request-text'
import { toMeetText } from './to-meet-text'
import { TradeOffChart } from './trade-off-chart'
import { useApply } from './use-apply'

/** What is asked for until the officer says otherwise, here or in the plan's criterion: half an hour after dispatch. */
const BY_S = 1800

/** "Whom to ask": the smallest set of tenders that meets a flow by a time, as a list to read out. */
export function RequestScreen({ districtId, planId }: { districtId: string; planId: string }) {
  return <PlanStudy districtId={districtId} planId={planId} page="request">{(study) => <RequestStudy study={study} />}</PlanStudy>
}

function RequestStudy({ study }: { study: Study }) {
  const { board, bundle, answer } = study
  const [given, setGiven] = useState<Partial<RequestAsk>>({})
  const { criterion } = board.plan
  const wanted_gpm = criterion?.flow_gpm ?? answer.result?.needed_gpm ?? answer.result?.sustainable_gpm ?? undefined
  const flow_gpm = given.flow_gpm ?? wanted_gpm
  const by_s = given.by_s ?? criterion?.by_s ?? BY_S
  const state = useRequest(bundle, flow_gpm !== undefined && flow_gpm > 0 ? { flow_gpm, by_s } : undefined)
  const isBlocked = answer.result?.issues.some(({ severity, code }) => severity === 'block' && code !== 'plan-without-tender' && code !== 'no-tender-left') && !answer.pending.answer
  return (
    <>
      <section className={styles.part} aria-labelledby="request-title">
        <h2 id="request-title" className={styles.title}>{say('advice.request.title')}</h2>
        <p className={styles.lead}>{say('advice.request.lead')}</p>
        <fieldset className={styles.fields} aria-label={say('advice.request.ask')}>
          <QuantityField label={say('advice.request.flow')} unit="gpm" value={flow_gpm} hasMark={false} min={1} isRequired onCommit={({ value }) => { setGiven({ ...given, flow_gpm: value }) }} />
          <QuantityField label={say('advice.request.by')} unit="s" value={by_s} hasMark={false} min={60} isRequired onCommit={({ value }) => { setGiven({ ...given, by_s: value }) }} />
        </fieldset>
        {isBlocked
          ? <EmptyState title={say('advice.blocked')} text={say('advice.blocked.text')} />
          : flow_gpm === undefined || flow_gpm <= 0
            ? answer.pending.answer ? <BeingWorkedOut /> : <p>{say('advice.request.need-flow')}</p>
            : state.issues.length > 0
              ? <IssueList issues={state.issues} names={board.names} />
              : state.list
                ? <Found list={state.list} study={study} />
                : state.state === 'stopped'
                  ? <div className={styles.actions}><span>{say('advice.stopped')}</span><Button size="s" label={say('advice.again')} onClick={state.again} /></div>
                  : <ProgressBar label={say('advice.request.working')} share={state.doneShare} onCancel={state.stop} />}
      </section>
      {state.list && !isBlocked && <Curve list={state.list} study={study} />}
    </>
  )
}

function Found({ list, study: { board, answer } }: { list: RequestList; study: Study }) {
  const [system] = useUnitSystem()
  const toast = useToast()
  const apply = useApply(board, 'request')
  const read = useRef<HTMLPreElement>(null)
  const { names } = board
  const flow = (value: number) => formatGiven(value, system, list.ask.flow_gpm)
  const asked = formatAsked(list.ask.flow_gpm, system)
  const tenders = list.tenderIds.length
  const dependable = list.dependable_gpm === null ? 'none' : flow(list.dependable_gpm)
  const undependable = list.outcome !== 'short' && list.dependable_gpm !== null ? formatShortBy(list.dependable_gpm, list.ask.flow_gpm, system) : undefined
  const sentence = list.outcome === 'met'
    ? say('advice.request.met', { tenders, pumpers: list.lines.length - tenders, asked, met: formatMinutes(list.met_s ?? 0, 'up'), flow: flow(list.flow_gpm), dependable })
    : list.outcome === 'late'
      ? say('advice.request.late', { tenders, asked, by: formatMinutes(list.ask.by_s), met: formatMinutes(list.met_s ?? 0, 'up') })
      : say('advice.request.short', { tenders, asked, flow: flow(list.flow_gpm), dependable, beyond: list.beyond ? toMeetText(list.beyond, 'advice.request.beyond', board.district, names, system, answer.pending.limitingLink ? undefined : answer.result?.limitingLink) : '' })
  const text = requestText(list, names(FIRE_GROUND) ?? board.plan.name, names, system)
  const copy = async () => {
    const isCopied = await copyText(text, read.current)
    toast({ text: say(isCopied ? 'advice.request.copied' : 'advice.request.copy-failed') })
  }
  return (
    <>
      <p className={styles.answer} role="status">{sentence}</p>
      {undependable && <p className={styles.recommend}>{say('advice.request.not-dependable', { short: undependable })}</p>}
      {(list.outcome === 'met' || !list.isExact) && <p className={styles.quiet}>{say(list.isExact ? 'advice.request.exact' : 'advice.request.heuristic')}</p>}
      <div className={styles.onScreen}>
        <DataTable
          caption={say('advice.request.list')} rows={list.lines} rowKey={({ apparatusId, siteId }) => `${apparatusId} ${siteId}`}
          columns={[
            { key: 'unit', head: say('advice.request.unit'), cell: ({ apparatusId }) => names(apparatusId) ?? apparatusId },
            { key: 'station', head: say('advice.request.station'), cell: (line) => stationText(line, names) },
            { key: 'task', head: say('advice.request.task'), cell: (line) => taskText(line, names) },
            { key: 'there', head: say('advice.request.there'), isNumber: true, cell: ({ arrive_s, isArrivalAssumed }) => (isArrivalAssumed ? say('result.assumed', { what: formatFrom(arrive_s) }) : formatFrom(arrive_s)), sortBy: ({ arrive_s }) => arrive_s },
            { key: 'ready', head: say('advice.request.ready'), isNumber: true, cell: ({ ready_s }) => (ready_s === undefined ? '' : formatFrom(ready_s)) },
            { key: 'planned', head: say('advice.request.in-plan'), cell: ({ isPlanned }) => say(isPlanned ? 'advice.request.in-plan.yes' : 'advice.request.in-plan.no') },
          ]}
        />
      </div>
      <h3 className={styles.subtitle}>{say('advice.request.read')}</h3>
      <pre ref={read} className={styles.read} tabIndex={0} aria-label={say('advice.request.read')}>{text}</pre>
      <div className={styles.actions}>
        <Button label={say('advice.request.copy')} onClick={() => { void copy() }} />
        <Button icon="print" label={say('advice.request.print')} onClick={() => { window.print() }} />
        {list.edits.length > 0 && <Button label={say('advice.request.apply')} onClick={() => { apply.here(list.edits, say('advice.request.apply')) }} />}
        {list.edits.length > 0 && <Button label={say('advice.apply-variant')} onClick={() => { void apply.variant(list.edits, say('advice.request.variant')) }} />}
      </div>
      <p className={styles.quiet}>{say('advice.request.estimate')}</p>
      <Caution kinds={['planning-aid']} />
    </>
  )
}

function Curve({ list, study: { board } }: { list: RequestList; study: Study }) {
  const [system] = useUnitSystem()
  const { names } = board
  const all = (ids: readonly string[]) => listWords(ids.map((id) => names(id) ?? id))
  return (
    <section className={styles.part} aria-labelledby="request-curve">
      <h2 id="request-curve" className={styles.title}>{say('advice.request.curve')}</h2>
      <div className={styles.curve}>
        <TradeOffChart curve={list.curve} asked_gpm={list.ask.flow_gpm} />
        <DataTable
          caption={say('advice.request.curve.table')} isCaptionHidden rows={list.curve} rowKey={({ tenderCount }) => String(tenderCount)}
          columns={[
            { key: 'count', head: say('advice.request.curve.tenders'), cell: ({ tenderCount }) => tenderCount },
            { key: 'flow', head: say('advice.request.curve.most'), isNumber: true, cell: ({ flow_gpm }) => formatGiven(flow_gpm, system, list.ask.flow_gpm) },
            { key: 'met', head: say('advice.request.curve.met'), isNumber: true, cell: ({ met_s }) => (met_s === null ? say('advice.request.curve.never') : formatMinutes(met_s, 'up')) },
            { key: 'which', head: say('advice.request.curve.which'), cell: ({ flowIds, isExact }) => <>{all(flowIds)}{!isExact && <span className={styles.quiet}> ({say('advice.request.curve.near')})</span>}</> },
          ]}
        />
      </div>
    </section>
  )
}
