'use client'

import { Command } from 'cmdk'
import { useRouter } from 'next/navigation'
import { memo, useCallback, useMemo, useState } from 'react'
import type { District, Plan } from '@/lib/plan'
import { useDocumentList, useDocuments } from '../_client'
import { Icon } from '../_look/icon'
import { findPage } from '../_shell/pages'
import { say } from '../_text'
import '../_text/areas/find'
import { findEntries } from './find-entries'
import { findGroups, type FindEntry, type FindGroup } from './find-entry'
import shared from '../_look/shared.module.css'
import styles from './find.module.css'
import { usePerform } from './use-perform'
import { readyName, readyTyped, scoreOf, type Readied } from './match-entries'

/** Until something is typed, no more of each group than one can take in. */
const FEW = 6
/** Of each group, when something is typed. */
const MANY = 20

type ReadyEntry = { readonly entry: FindEntry; readonly name: Readied }
type FoundGroup = { readonly group: FindGroup; readonly best: number; readonly entries: readonly FindEntry[] }

/** The list of everything with a name; choosing one goes there. */
export function FindPanel({ onDone }: { onDone: () => void }) {
  const { districtId, planId } = findPage(location.pathname)?.ids ?? {}
  const router = useRouter()
  const perform = usePerform()
  const { status, entries } = useDocumentList()
  const [typed, setTyped] = useState('')
  const districts = useDocuments<District>(entries.filter(({ kind, deletedAt }) => kind === 'district' && deletedAt === undefined).map(({ id }) => id))
  const plans = useDocuments<Plan>(planId === undefined ? [] : [planId])
  const all = useMemo(() => findEntries({ entries, districts, plans, here: { districtId, planId } }).map((entry): ReadyEntry => ({ entry, name: readyName(entry.label, `${entry.note} ${entry.also ?? ''}`) })), [entries, districts, plans, districtId, planId])
  const fillers = useMemo(() => new Set(say('find.filler').split(' ')), [])
  const found = useMemo(() => matching(all, typed, fillers), [all, typed, fillers])
  const go = useCallback(({ href, act }: FindEntry) => {
    onDone()
    if (act) perform(act)
    else router.push(href)
  }, [onDone, perform, router])
  return (
    <Command label={say('find.title')} shouldFilter={false} loop className={styles.command}>
      <div className={styles.ask}>
        <Icon name="search" />
        <Command.Input autoFocus value={typed} onValueChange={setTyped} placeholder={say('find.ask')} className={styles.input} />
      </div>
      <p className={shared.heard} role="status">{typed.trim() !== '' && found.length > 0 && say('kit.search.count', { count: found.reduce((sum, { entries: own }) => sum + own.length, 0) })}</p>
      <Command.List label={say('find.list')} className={styles.list}>
        {found.length === 0 && <p className={styles.nothing} role="status">{say(status === 'loading' ? 'find.loading' : 'find.nothing')}</p>}
        {found.map(({ group, entries: own }) => (
          <Command.Group key={group} heading={say(`find.group.${group}`)} className={styles.group}>
            {own.map((entry) => <FoundEntry key={entry.key} entry={entry} onGo={go} />)}
          </Command.Group>
        ))}
        {status === 'unreachable' && <p className={styles.nothing}>{say('find.unreachable')}</p>}
      </Command.List>
    </Command>
  )
}

/** The same at the next letter when it is still found. */
const FoundEntry = memo(function FoundEntry({ entry, onGo }: { entry: FindEntry; onGo: (entry: FindEntry) => void }) {
  return (
    <Command.Item value={entry.key} onSelect={() => { onGo(entry) }} className={styles.item}>
      <Icon name={entry.icon} />
      <span className={styles.label}>{entry.label}</span>
      <span className={styles.note}>{entry.note}</span>
    </Command.Item>
  )
})

/** With something typed the best comes first, and its group with it; else groups keep their order, and what is done or explained waits until it is asked for. */
function matching(all: readonly ReadyEntry[], typed: string, fillers: ReadonlySet<string>): FoundGroup[] {
  const isAsked = typed.trim() !== ''
  const asked = readyTyped(typed, fillers)
  const scored = all.map(({ entry, name }) => ({ entry, score: scoreOf(name, asked) })).filter(({ score }) => score > 0)
  const groups = findGroups.map((group) => {
    const own = scored.filter(({ entry }) => entry.group === group).sort((a, b) => b.score - a.score)
    const most = isAsked ? MANY : group === 'here' ? own.length : group === 'act' || group === 'help' ? 0 : FEW
    return { group, best: own[0]?.score ?? 0, entries: own.slice(0, most).map(({ entry }) => entry) }
  }).filter(({ entries }) => entries.length > 0)
  return isAsked ? groups.sort((a, b) => b.best - a.best) : groups
}
