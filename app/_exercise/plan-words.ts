import type { EditBody } from '@/lib/plan'
import { listWords, say } from '../_text'
import '../_text/areas/exercise'

type Item = { readonly id: string; readonly name?: string; readonly pumperId?: string; readonly tenderId?: string }

/** What edits of the plan come to, in a sentence or a few. */
export function planWords(edits: readonly EditBody[], name: (id: string) => string): string {
  const added = edits.flatMap((edit) => (edit.kind === 'addItem' ? [{ collection: edit.collection, item: edit.item as Item }] : []))
  const gone = edits.flatMap((edit) => (edit.kind === 'removeItem' ? [{ collection: edit.collection, id: edit.id }] : []))
  const carrying = edits.flatMap((edit) => (edit.kind === 'setFields' && edit.collection === 'dumpSites' && 'demandShare' in edit.set && edit.set.demandShare !== 0 ? [name(edit.id ?? '')] : []))
  const isNewDump = added.some(({ collection }) => collection === 'dumpSites')
  const words = [
    ...added.flatMap(({ collection, item }) => {
      if (collection === 'tenders') return [say('exercise.change.tenderCalled', { tender: name(item.tenderId ?? item.id) })]
      if (collection === 'hoseLays') return [say('exercise.change.layLaid', { lay: item.name ?? name(item.id) })]
      if (collection !== 'fillSites' && collection !== 'dumpSites') return []
      const pumper = item.pumperId === undefined ? say('exercise.change.siteNobody') : name(item.pumperId)
      const there = item.name ?? name(item.id)
      const old = gone.find((one) => one.collection === collection)
      if (!old) return [say('exercise.change.siteAdded', { site: there, pumper })]
      const site = name(old.id)
      return [site === there ? say('exercise.change.siteSame', { site, pumper }) : say('exercise.change.siteAnew', { site, there, pumper })]
    }),
    ...edits.flatMap((edit) => {
      if (edit.kind !== 'setFields') return []
      const site = name(edit.id ?? '')
      if (typeof edit.set.bayCount === 'number') return [say('exercise.change.bays', { site, count: edit.set.bayCount })]
      return typeof edit.set.positionCount === 'number' ? [say('exercise.change.positions', { site, count: edit.set.positionCount })] : []
    }),
    ...(carrying.length > 0 && !isNewDump ? [say('exercise.change.carry', { sites: listWords(carrying) })] : []),
  ]
  return words.length > 0 ? words.join('; ') : say('exercise.change.plan')
}
