'use client'

import { stepsAt } from '@/lib/field-log'
import { Shell } from '../_frame/shell'
import { logHref } from '../_links/log-href'
import { formatDay, say } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { EmptyState } from '../_ui/empty-state'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './paper.module.css'
import { postKey, postName, postsOf, useLog } from './use-log'

/** Rows for tenders that nobody planned on, and rounds of each tender on a sheet. */
const SPARE_ROWS = 3
const ROUNDS = 3
const READING_ROWS = 16

/** One sheet a post, to be filled in with a pencil: tenders down, what happens across, as many rounds as fit. */
export function PaperForm({ districtId, logId }: { districtId: string; logId: string }) {
  const { log, world, names, districtName, status } = useLog(districtId, logId)
  const [system] = useUnitSystem()
  const shell = { ...(districtName !== undefined && { district: { id: districtId, name: districtName } }), screen: 'log' as const }
  if (!log) return <Shell {...shell}><EmptyState title={say(status === 'loading' ? 'log.loading' : 'log.missing')} /></Shell>
  const tenders = log.planned?.plan.tenders.map(({ tenderId }) => names(tenderId) ?? tenderId) ?? log.units.map(({ name }) => name)
  const rows = [...tenders, ...Array.from({ length: SPARE_ROWS }, () => '')]
  return (
    <Shell {...shell}>
      <div className={styles.screen}>
        <header className={styles.tools}>
          <h1 className={styles.title}>{say('log.form.title')}</h1>
          <p>{say('log.form.lead')}</p>
          <div className={styles.buttons}>
            <Button look="primary" icon="print" label={say('log.form.print')} onClick={() => { window.print() }} />
            <ButtonLink href={logHref(districtId, logId)} label={say('log.form.back')} />
          </div>
        </header>
        {postsOf(world).map((post) => {
          const steps = stepsAt(post.kind)
          return (
            <section key={postKey(post)} className={styles.sheet} aria-label={postName(post, names)}>
              <h2 className={styles.heading}>{postName(post, names)}</h2>
              <dl className={styles.facts}>
                <div><dt>{log.name}</dt><dd /></div>
                <div><dt>{say('log.form.date')}</dt><dd>{formatDay(log.date)}</dd></div>
                <div><dt>{say('log.form.crew')}</dt><dd className={styles.line} /></div>
              </dl>
              <p className={styles.small}>{say('log.form.clock')}</p>
              {steps.length > 0 && (
                <table className={styles.table}>
                  <thead><tr><th scope="col">{say('log.form.tender')}</th>{steps.map((kind) => <th key={kind} scope="col">{say('log.event', { kind })}</th>)}</tr></thead>
                  <tbody>
                    {rows.flatMap((name, row) => Array.from({ length: ROUNDS }, (_, round) => (
                      <tr key={`${row} ${round}`} data-first={round === 0}>
                        {round === 0 && (name === '' ? <td rowSpan={ROUNDS} /> : <th scope="row" rowSpan={ROUNDS}>{name}</th>)}
                        {steps.map((kind) => <td key={kind} />)}
                      </tr>
                    )))}
                  </tbody>
                </table>
              )}
              <table className={styles.table}>
                <caption>{say('log.form.readings')} ({say(`log.form.unit.${system === 'us' ? 'us' : 'metric'}`)})</caption>
                <thead><tr>{[0, 1].flatMap((half) => [<th key={`t${half}`} scope="col">{say('log.form.time')}</th>, <th key={`r${half}`} scope="col">{say('log.form.reading')}</th>])}</tr></thead>
                <tbody>{Array.from({ length: steps.length > 0 ? 3 : READING_ROWS }, (_, row) => <tr key={row}><td /><td /><td /><td /></tr>)}</tbody>
              </table>
              <p className={styles.notes}>{say('log.form.notes')}</p>
              <p className={styles.small}>{say('log.form.foot')}</p>
            </section>
          )
        })}
      </div>
    </Shell>
  )
}
