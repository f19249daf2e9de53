'use client'

import { useEffect, useState } from 'react'
import { getClient, useDocumentList, type DocumentEntry } from '../_client'
import { formatDay, say } from '../_text'
import '../_text/areas/home'
import { Button } from '../_ui/button'
import { Fold } from '../_ui/fold'
import { useToast } from '../_ui/toast'
import { useTellRefused } from '../_ui/use-tell-refused'
import styles from './put-away-list.module.css'
import { putAwayOf } from './put-away'

type Props = { districtId?: string; kinds?: readonly DocumentEntry['kind'][] }

/** What was put away, each with the way back; nothing while there is none. */
export function PutAwayList({ districtId, kinds }: Props) {
  const toast = useToast()
  const tellRefused = useTellRefused()
  const { status, entries } = useDocumentList()
  const [all, setAll] = useState<readonly DocumentEntry[]>([])
  // Asked for again with each new list: what is put away anywhere makes one.
  useEffect(() => {
    if (status === 'loading') return
    let isGone = false
    void getClient().listWithPutAway().then((found) => { if (!isGone) setAll(found) }, () => undefined)
    return () => { isGone = true }
  }, [status, entries])
  const own = putAwayOf(all, districtId).filter(({ kind }) => kinds === undefined || kinds.includes(kind))
  if (own.length === 0) return null
  const nameOf = (id: string | undefined) => all.find((entry) => entry.id === id)?.name
  const bringBack = async ({ id, name }: DocumentEntry) => {
    const refused = await getClient().bringBack(id)
    if (!tellRefused(refused)) toast({ text: say('home.brought-back', { name }) })
  }
  return (
    <Fold title={say('home.put-away', { count: own.length })} note={say('home.put-away.note')}>
      <ul className={styles.list}>
        {own.map((entry) => (
          <li key={entry.id} className={styles.entry}>
            <span className={styles.name}>
              {entry.name} <span className={styles.quiet}>{say(`home.put-away.${entry.kind}`, { district: districtId === undefined ? (nameOf(entry.districtId) ?? 'none') : 'none', day: formatDay(entry.deletedAt ?? '') })}</span>
            </span>
            <Button size="s" label={say('kit.bring-back')} aria-label={say('kit.bring-back.name', { name: entry.name })} onClick={() => { void bringBack(entry) }} />
          </li>
        ))}
      </ul>
    </Fold>
  )
}
