'use client'

import { useState } from 'react'
import { exchangeLimits, isOwn, takeIn, type FoundFile } from '@/lib/exchange'
import type { District } from '@/lib/plan'
import { getClient, type DocumentEntry } from '../_client'
import { say, sayIssue } from '../_text'
import '../_text/areas/exchange'
import { Button } from '../_ui/button'
import { IssueList } from '../_ui/issue-list'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useSayDone } from '../_ui/use-say-done'
import { CandidateList } from './candidate-list'
import styles from './exchange.module.css'
import { FileChoicesForm } from './file-choices'
import { ProblemList } from './problem-list'
import { useTakings } from './use-takings'
import { useUnderstood } from './use-understood'

type Props = { district: District; plans: readonly DocumentEntry[]; file: FoundFile; fileName: string; onDone: () => void }

/** What a file would bring: its columns, its bad rows by name, what is here already; then all that is wanted, in one act. */
export function FoundPlaces({ district, plans, file, fileName, onDone }: Props) {
  const [system] = useUnitSystem()
  const sayDone = useSayDone()
  const study = useUnderstood(district, file, fileName)
  const { candidates, problems } = study.understood
  const takings = useTakings(candidates)
  const [refusal, setRefusal] = useState<string>()
  const isTable = file.format === 'csv'
  const wanted = candidates.map((candidate, i) => ({ candidate, taking: takings.of(i) })).filter(({ taking }) => taking !== 'skip')
  const isTooMany = wanted.length > exchangeLimits.maxTaken
  const bad = problems.filter(({ issue }) => issue.severity === 'block')
  const take = () => {
    const client = getClient()
    const all = candidates.map((candidate, i) => ({ candidate, taking: takings.of(i) }))
    const taken = takeIn(all, { district, ...(study.plan && { plan: study.plan }) }, () => client.newId())
    const changes = [{ docId: district.id, body: taken.district }, ...(study.plan ? [{ docId: study.plan.id, body: taken.plan }] : [])].filter(({ body }) => body.length > 0)
    const refused = client.act(changes, { label: say('exchange.act', { file: fileName }) })
    if (refused) return setRefusal(sayIssue(refused, () => undefined, system))
    sayDone(say('exchange.taken', { added: taken.addedCount, updated: taken.updatedCount }))
    onDone()
  }
  return (
    <>
      <p>{say(isTable ? 'exchange.read' : 'exchange.read.features', { file: fileName, count: file.features.length })} {file.features.every(isOwn) && say('exchange.read.own')}</p>
      {file.notes.length > 0 && <IssueList issues={file.notes} names={() => undefined} label={say('exchange.notes')} />}
      <FileChoicesForm study={study} file={file} plans={plans} />
      <section className={styles.part} aria-labelledby="exchange-report">
        <h3 id="exchange-report" className={styles.small}>{say('exchange.report')}</h3>
        {bad.length > 0 && <ProblemList title={say('exchange.bad', { count: new Set(bad.map(({ at }) => at)).size })} problems={bad} isTable={isTable} isBad />}
        {problems.length > bad.length && <ProblemList title={say('exchange.looks')} problems={problems.filter((one) => one.issue.severity !== 'block')} isTable={isTable} />}
        {candidates.length === 0 ? <p className={styles.quiet}>{say('exchange.report.none')}</p> : <CandidateList candidates={candidates} takings={takings} />}
        {refusal !== undefined && <p className={styles.failed} role="alert">{refusal}</p>}
        {isTooMany && <p className={styles.failed} role="alert">{say('exchange.take.many', { count: wanted.length, most: exchangeLimits.maxTaken })}</p>}
        <div className={styles.take}>
          <Button look="primary" icon="check" disabled={wanted.length === 0 || isTooMany} label={say('exchange.take', { count: wanted.length })} onClick={take} />
          <Button look="quiet" icon="close" label={say('kit.cancel')} onClick={onDone} />
        </div>
      </section>
    </>
  )
}

