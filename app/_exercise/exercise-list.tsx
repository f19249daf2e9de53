'use client'

import { useDistrict, useDocumentList } from '../_client'
import { PutAwayList } from '../_frame/put-away-list'
import { UndoButtons } from '../_frame/undo-buttons'
import { usePutAway } from '../_frame/use-put-away'
import { Shell } from '../_frame/shell'
import { formatDay, say } from '../_text'
import '../_text/areas/exercise'
import { Button } from '../_ui/button'
import { Card } from '../_ui/card'
import { DocumentList, DocumentRow } from '../_ui/document-list'
import { EmptyState } from '../_ui/empty-state'
import { exerciseHref } from '../_links/exercise-href'
import styles from './exercise.module.css'
import { NewExercise } from './new-exercise'

const guide = ['1', '2', '3', '4', '5', '6', '7'] as const

/** The exercises of a district: make one, take one up, put one away. */
export function ExerciseList({ districtId }: { districtId: string }) {
  const putAway = usePutAway()
  const district = useDistrict(districtId).doc
  const list = useDocumentList()
  const own = list.entries.filter((entry) => entry.districtId === districtId)
  const exercises = own.filter(({ kind }) => kind === 'exercise')
  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="exercise" actions={<UndoButtons />}>
      <div className={styles.page}>
        <header>
          <h1 className={styles.title}>{say('exercise.title')}</h1>
          <p className={styles.lead}>{say('exercise.lead')}</p>
        </header>
        {exercises.length === 0
          ? <EmptyState title={say(list.status === 'loading' ? 'exercise.loading' : list.status === 'unreachable' ? 'exercise.unreachable' : 'exercise.none')} {...(list.status === 'ready' && { text: say(own.some(({ kind }) => kind === 'plan') ? 'exercise.none.text' : 'exercise.none.no-plan') })} />
          : (
            <DocumentList>
              {exercises.map(({ id, name, updatedAt }) => (
                <DocumentRow key={id} href={exerciseHref(districtId, id)} name={name} facts={[updatedAt && say('exercise.made-on', { day: formatDay(updatedAt) })]}>
                  <Button size="s" look="quiet" icon="trash" label={say('exercise.delete')} aria-label={say('kit.act-on', { act: say('exercise.delete'), name })} onClick={() => { void putAway(id, say('exercise.delete'), say('exercise.deleted', { name })) }} />
                </DocumentRow>
              ))}
            </DocumentList>
          )}
        <PutAwayList districtId={districtId} kinds={['exercise']} />
        <NewExercise districtId={districtId} plans={own.filter(({ kind }) => kind === 'plan')} />
        <Card title={say('exercise.guide')} level={2}>
          <ol className={styles.guide}>{guide.map((step) => <li key={step}>{say(`exercise.guide.${step}`)}</li>)}</ol>
        </Card>
      </div>
    </Shell>
  )
}
