'use client'

import { useState } from 'react'
import type { SiteEvent } from '@/lib/plan'
import { mintId } from '../_client'
import { say } from '../_text'
import '../_text/areas/log'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { Fold } from '../_ui/fold'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import styles from './log.module.css'
import type { LogDesk } from './use-log'

const NEW = 'new'

/** A tender that nobody planned on arrives: one of the district, or one that nobody here knows. */
export function AddTender({ desk, post, shownIds }: { desk: LogDesk; post: SiteEvent['post']; shownIds: readonly string[] }) {
  const [chosen, setChosen] = useState<string>()
  const [name, setName] = useState<string>()
  const [tank_gal, setTank] = useState<number>()
  const others = desk.world.units.filter(({ id, isTender }) => isTender && !shownIds.includes(id))
  const isNew = chosen === NEW || others.length === 0
  const add = () => {
    const id = isNew ? mintId() : chosen
    if (id === undefined || (isNew && name === undefined)) return
    if (isNew) desk.edit({ kind: 'addItem', collection: 'units', item: { id, name, ...(tank_gal !== undefined && { tank_gal }) } }, say('log.add-tender'))
    void desk.note([{ post, kind: 'arrived', apparatusId: id }])
    setChosen(undefined)
    setName(undefined)
    setTank(undefined)
  }
  return (
    <Fold title={say('log.add-tender')}>
      <div className={styles.form}>
        {others.length > 0 && <ChoiceField label={say('log.add-tender.which')} value={chosen} choices={[...others.map(({ id, name: label }) => ({ value: id, label })), { value: NEW, label: say('log.add-tender.new') }]} onCommit={setChosen} />}
        {isNew && (
          <>
            <TextField label={say('log.add-tender.name')} value={name} onCommit={setName} />
            <QuantityField label={say('log.add-tender.tank')} unit="gal" value={tank_gal} min={0} max={20_000} hasMark={false} onCommit={({ value }) => { setTank(value) }} />
          </>
        )}
        <Button className={styles.keep} icon="add" label={say('log.add-tender.do')} whyNot={(isNew ? name : chosen) === undefined ? say(isNew ? 'log.add-tender.first-name' : 'log.add-tender.first-choose') : undefined} onClick={add} />
      </div>
    </Fold>
  )
}
