'use client'

import { useState } from 'react'
import { takings as choices, type Candidate, type Taking } from '@/lib/exchange'
import { formatQuantity, listWords, say, type UnitSystem } from '../_text'
import '../_text/areas/exchange'
import { Button } from '../_ui/button'
import { ChoiceField } from '../_ui/choice-field'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import { awayWords, endName, listName } from './exchange-words'
import styles from './exchange.module.css'
import type { Takings } from './use-takings'

const PAGE = 50

/** Places that can be taken: what each would be, what is here already, and what is done with it. */
export function CandidateList({ candidates, takings }: { candidates: readonly Candidate[]; takings: Takings }) {
  const [system] = useUnitSystem()
  const [shownCount, setShownCount] = useState(PAGE)
  const indexes = candidates.map((_, index) => index)
  const fresh = indexes.filter((index) => !candidates[index]?.match)
  const known = indexes.filter((index) => candidates[index]?.match)
  return (
    <>
      <div className={styles.bulk}>
        {fresh.length > 1 && <Bulk label={say('exchange.all-new')} indexes={fresh} takings={takings} offers={['add', 'skip']} />}
        {known.length > 1 && <Bulk label={say('exchange.all-known')} indexes={known} takings={takings} offers={choices} />}
      </div>
      <DataTable
        caption={say('exchange.places')} isCaptionHidden rows={indexes.slice(0, shownCount)} rowKey={String}
        columns={[
          { key: 'name', head: say('exchange.name'), cell: (index) => candidates[index]?.item.name },
          { key: 'what', head: say('exchange.what'), cell: (index) => { const candidate = candidates[index]; return candidate && listName(candidate.list) } },
          { key: 'there', head: say('exchange.there'), cell: (index) => { const candidate = candidates[index]; return candidate && thereWords(candidate, system) } },
          { key: 'taking', head: say('exchange.taking'), cell: (index) => <Take candidate={candidates[index]} value={takings.of(index)} onChange={(taking) => { takings.set([index], taking) }} /> },
        ]}
      />
      {candidates.length > shownCount && <Button size="s" look="quiet" label={say('exchange.more', { count: candidates.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />}
    </>
  )
}

function Bulk({ label, indexes, takings, offers }: { label: string; indexes: readonly number[]; takings: Takings; offers: readonly Taking[] }) {
  const first = takings.of(indexes[0] ?? 0)
  const isOne = indexes.every((index) => takings.of(index) === first)
  return <ChoiceField label={label} value={isOne ? first : undefined} choices={offers.map((value) => ({ value, label: say(`exchange.${value}`) }))} onCommit={(taking) => { if (taking) takings.set(indexes, taking) }} />
}

function Take({ candidate, value, onChange }: { candidate: Candidate | undefined; value: Taking; onChange: (taking: Taking) => void }) {
  if (!candidate) return null
  const offers = choices.filter((taking) => (taking === 'update' ? candidate.match && candidate.changes.length > 0 : taking === 'add' ? candidate.list !== 'fireGround' || !candidate.match : true))
  return (
    <select className={styles.select} aria-label={say('exchange.taking-of', { name: candidate.item.name })} value={value} onChange={(event) => { onChange(offers.find((one) => one === event.target.value) ?? 'skip') }}>
      {offers.map((taking) => <option key={taking} value={taking}>{say(`exchange.${taking}`)}</option>)}
    </select>
  )
}

function thereWords({ match, repeats, changes, far_mi, looksSwapped }: Candidate, system: UnitSystem): string {
  const words: string[] = []
  if (match?.by === 'id') words.push(changes.length === 0 ? say('exchange.same.id') : say('exchange.differs.id', { fields: listWords(changes.map(endName)) }))
  else if (match?.by === 'placeAndName') words.push(say('exchange.match.placeAndName', { name: match.name, away: awayWords(match.away_m, system) }))
  else if (match) words.push(say('exchange.match.place', { name: match.name }))
  if (repeats !== undefined) words.push(say('exchange.repeats', { at: repeats }))
  if (far_mi !== undefined) words.push(say(looksSwapped ? 'exchange.far-swapped' : 'exchange.far', { away: formatQuantity(far_mi, 'mi', system, { digits: 0 }) }))
  return words.length > 0 ? words.join('; ') : say('exchange.new')
}
