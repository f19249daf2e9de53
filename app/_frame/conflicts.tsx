'use client'

import { findUnit } from '@/lib/units'
import { getClient, useDocument, type Conflict } from '../_client'
import { fieldLabel, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './conflicts.module.css'

/** What was changed here and elsewhere at once: both values, one to be chosen. */
export function Conflicts({ docIds, names }: { docIds: readonly string[]; names: NameOf }) {
  return <>{docIds.map((id) => <ConflictsOf key={id} docId={id} names={names} />)}</>
}

function ConflictsOf({ docId, names }: { docId: string; names: NameOf }) {
  const { conflicts } = useDocument(docId)
  const [system] = useUnitSystem()
  if (conflicts.length === 0) return null
  return (
    <section className={styles.conflicts} aria-label={say('plan.conflict.title')}>
      <h2 className={styles.title}>{say('plan.conflict.title')}</h2>
      {conflicts.map((conflict) => <OneConflict key={conflict.id} conflict={conflict} names={names} system={system} />)}
    </section>
  )
}

function OneConflict({ conflict, names, system }: { conflict: Conflict; names: NameOf; system: UnitSystem }) {
  const choose = (choice: 'mine' | 'theirs') => { getClient().resolve(conflict.docId, conflict.id, choice, { label: conflict.label }) }
  return (
    <div className={styles.conflict}>
      {conflict.values.map(({ path, mine, theirs }) => {
        const [, itemId, field] = path.includes('/') ? path.split('/') : [undefined, conflict.docId, path]
        const shown = (value: unknown) => shownValue(value, field ?? path, system)
        return <p key={path}>{say('plan.conflict.text', { field: fieldLabel(field ?? path), item: names(itemId ?? '') ?? '', mine: shown(mine), theirs: shown(theirs) })}</p>
      })}
      <div className={styles.buttons}>
        <Button size="s" label={say('plan.conflict.mine')} onClick={() => { choose('mine') }} />
        <Button size="s" label={say('plan.conflict.theirs')} onClick={() => { choose('theirs') }} />
      </div>
    </div>
  )
}

function shownValue(value: unknown, field: string, system: UnitSystem): string {
  const unit = findUnit(field)
  if (typeof value === 'number' && unit) return formatQuantity(value, unit, system)
  if (value === undefined || value === null) return say('quantity.unknown')
  return typeof value === 'object' ? say('plan.conflict.other') : String(value)
}
