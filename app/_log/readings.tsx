'use client'

import { useRef, useState } from 'react'
import { siteEventValues, type PostKind, type SiteEvent, type SiteEventKind } from '@/lib/plan'
import { formatShare, say } from '../_text'
import '../_text/areas/log'
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
  const values = useTyped<Partial<Record<SiteEventKind, number>>>({})
  const text = useTyped<string | undefined>(undefined)
  const note = (kind: SiteEventKind, rest: { value?: number; note?: string } = {}) => desk.note([{ post, kind, ...rest, ...(by !== undefined && { by }) }])
  const capacity_gal = post.kind === 'dump' && post.siteId !== undefined ? desk.world.capacity_gal(post.siteId) : undefined
  return (
    <section className={styles.part} aria-labelledby="log-readings">
      <h2 id="log-readings" className={styles.heading}>{say('log.readings')}</h2>
      {post.kind === 'draft' && <button type="button" className={styles.big} onClick={() => { void note('primeGot') }}>{say('log.prime')}</button>}
      {READ_AT[post.kind].map((kind) => {
        const rule = siteEventValues[kind]
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
            {/* What is being typed stands in place of what stood there: a press notes the one or nothing. */}
            <div className={styles.readingRow} onInput={() => { values.set({ ...values.latest(), [kind]: undefined }) }}>
              <QuantityField label={labelOf(kind, post)} unit={rule.unit} value={values.shown[kind]} min={rule.low} max={rule.high} hasMark={false} onCommit={({ value }) => { values.set({ ...values.latest(), [kind]: value }) }} />
              <Button
                className={styles.keep} label={say('log.reading.keep')} aria-label={`${labelOf(kind, post)}: ${say('log.reading.keep')}`}
                onClick={({ currentTarget }) => {
                  const value = values.afterLeaving(currentTarget)[kind]
                  if (value !== undefined) void note(kind, { value }).then(() => { values.set({ ...values.latest(), [kind]: undefined }) })
                }}
              />
            </div>
          </div>
        )
      })}
      <div className={styles.readingRow}>
        <TextField label={say('log.note')} value={text.shown} maxLength={2000} onCommit={text.set} />
        <Button
          className={styles.keep} label={say('log.note.keep')}
          onClick={({ currentTarget }) => {
            const written = text.afterLeaving(currentTarget)
            if (written !== undefined) void note('note', { note: written }).then(() => { text.set(undefined) })
          }}
        />
      </div>
    </section>
  )
}

/** Whose flow it is hangs on the post. */
const labelOf = (kind: 'tankLevel' | 'flow' | 'pressure', { kind: post }: SiteEvent['post']): string => say(kind === 'flow' ? `log.reading.flow.${post}` : `log.reading.${kind}`)

/**
 * What is typed into fields, for a button beside them that takes it in the same press: a phone that is tapped on a button may leave the
 * field in focus, and then nothing of it has been committed yet.
 */
function useTyped<T>(first: T): { shown: T; set(next: T): void; latest(): T; afterLeaving(button: HTMLElement): T } {
  const [shown, show] = useState(first)
  const latest = useRef(first)
  return {
    shown,
    set: (next) => { latest.current = next; show(next) },
    latest: () => latest.current,
    afterLeaving: (button) => {
      const field = button.parentElement?.querySelector<HTMLElement>('input, textarea')
      if (document.activeElement === field) field?.blur()
      if (latest.current === undefined) field?.focus()
      return latest.current
    },
  }
}
