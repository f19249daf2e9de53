'use client'

import { namesOf, type District, type Plan } from '@/lib/plan'
import { useDocument, useSaveState } from '../_client'
import { Conflicts } from '../_frame/conflicts'
import { say } from '../_text'
import styles from './device.module.css'

/** What was changed here and elsewhere at once, document by document. */
export function ToSettle({ docIds }: { docIds: readonly string[] }) {
  const { conflictCount } = useSaveState()
  if (conflictCount === 0) return null
  return (
    <section className={styles.part} aria-labelledby="device-settle">
      <h2 id="device-settle" className={styles.heading}>{say('device.settle')}</h2>
      {docIds.map((docId) => <OneDocument key={docId} docId={docId} />)}
    </section>
  )
}

function OneDocument({ docId }: { docId: string }) {
  const { doc, conflicts } = useDocument(docId)
  const districtId = typeof doc?.districtId === 'string' ? doc.districtId : docId
  const district = useDocument<District>(districtId).doc
  if (!doc || !district || conflicts.length === 0) return null
  // A district's own items stand in the district; it takes the plan's place here.
  const known = namesOf({ district, plan: doc as Plan })
  return (
    <div className={styles.district}>
      <h3 className={styles.name}>{String(doc.name)}</h3>
      <Conflicts docIds={[docId]} names={(id) => known.get(id)} />
    </div>
  )
}
