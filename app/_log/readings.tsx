'use client'

import { useState } from 'react'
import { siteEventValues, type PostKind, type SiteEvent, type SiteEventKind } from '@/lib/plan'
import { formatShare, say } from '../_text'
import { Button } from '../_ui/button'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import styles from './log.module.css'
import type { LogDesk } from './use-log'

const READ_AT: Readonly<Record<PostKind, readonly ('tankLevel' | 'flow' | 'pressure')[]>> = { fill: ['flow', 'pressure'], dump: ['tankLevel', 'flow', 'pressure'], attack: ['flow', 'pressure'], draft: ['pressure', 'flow'] }

/** Parts of what the tanks hold that can be told by eye. */
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const

/** What is read off gauges and tanks at a post, the prime, and notes. */
export function Readings({ desk, post, by }: { desk: LogDesk; post: SiteEvent['post']; by: string | undefined }) {
  const [values, setValues] = useState<Partial<Record<SiteEventKind, number>>>({})
  const [text, setText] = useState<string>()
  const note = (kind: SiteEventKind, rest: { value?: number; note?: string } = {}) => desk.note([{ post, kind, ...rest, ...(by !== undefined && { by }) }])
  const capacity_gal = post.kind === 'dump' && post.siteId !== undefined ? desk.world.capacity_gal(post.siteId) : undefined
  return (
    <section className={styles.part} aria-labelledby="log-readings">
      <h2 id="log-readings" className={styles.heading}>{say('log.readings')}</h2>
      {post.kind === 'draft' && <button type="button" className={styles.big} onClick={() => { void note('primeGot') }}>{say('log.prime')}</button>}
      {READ_AT[post.kind].map((kind) => {
        const rule = siteEventValues[kind]
        const value = values[kind]
        return rule && (
          <div key={kind} className={styles.reading}>
            {kind === 'tankLevel' && capacity_gal !== undefined && (
              <div className={styles.shares} role="group" aria-label={say('log.reading.tankLevel')}>
                {SHARES.map((share) => {
                  const name = share === 0 ? say('log.reading.empty') : share === 1 ? say('log.reading.full') : formatShare(share)
                  return (
                    <Button
                      key={share} className={styles.other} label={name} aria-label={say('kit.act-on', { act: say('log.reading.tankLevel'), name })}
                      onClick={() => { void note('tankLevel', { value: Math.round(share * capacity_gal) }) }}
                    />
                  )
                })}
              </div>
            )}
            <div className={styles.readingRow}>
              <QuantityField label={say(`log.reading.${kind}`)} unit={rule.unit} value={value} min={rule.low} max={rule.high} hasMark={false} onCommit={({ value: typed }) => { setValues({ ...values, [kind]: typed }) }} />
              <Button
                className={styles.keep} label={say('log.reading.keep')} aria-label={`${say(`log.reading.${kind}`)}: ${say('log.reading.keep')}`} disabled={value === undefined}
                onClick={() => { if (value !== undefined) void note(kind, { value }).then(() => { setValues({ ...values, [kind]: undefined }) }) }}
              />
            </div>
          </div>
        )
      })}
      <div className={styles.readingRow}>
        <TextField label={say('log.note')} value={text} maxLength={2000} onCommit={setText} />
        <Button className={styles.keep} label={say('log.note.keep')} disabled={text === undefined} onClick={() => { if (text !== undefined) void note('note', { note: text }).then(() => { setText(undefined) }) }} />
      </div>
    </section>
  )
}
