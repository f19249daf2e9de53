'use client'

import { useRouter } from 'next/navigation'
import { useRef, useState } from 'react'
import type { Plan } from '@/lib/plan'
import { bundleFromDocuments, copyOfPlan, documentsFromBundle, getClient, useDistrict, useDocumentList, usePlansOf } from '../_client'
import { compareHref, MOST_PLANS } from '../_links/compare-href'
import { PutAwayList } from '../_frame/put-away-list'
import { useNewPlan } from '../_frame/use-new-plan'
import { Shell } from '../_frame/shell'
import { UndoButtons } from '../_frame/undo-buttons'
import { usePutAway } from '../_frame/use-put-away'
import { say, sayIssue } from '../_text'
import '../_text/areas/compare'
import { formatDay } from '../_text/format-day'
import { Button } from '../_ui/button'
import { ButtonLink } from '../_ui/button-link'
import { DocumentList, DocumentRow } from '../_ui/document-list'
import { EmptyState } from '../_ui/empty-state'
import { Menu } from '../_ui/menu'
import { saveFile } from '../_ui/save-file'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useTellRefused } from '../_ui/use-tell-refused'
import { makeWholeBundle } from '../_worker'
import { useKeptAnswers } from './kept-answers'
import { fireWords, firesOf, flowWords } from './plan-fires'
import { readyDocument } from './ready-document'
import styles from './plan-list.module.css'
import { screenHref } from '../_links/screens'

const MOST_BYTES = 64 * 1024 * 1024

/** The plans of a district: begin, open, copy, delete, export, and open a plan file. */
export function PlanList({ districtId }: { districtId: string }) {
  const router = useRouter()
  const toast = useToast()
  const tellRefused = useTellRefused()
  const putAway = usePutAway()
  const [system] = useUnitSystem()
  const district = useDistrict(districtId).doc
  const list = useDocumentList()
  const file = useRef<HTMLInputElement>(null)
  const [picked, setPicked] = useState<readonly string[]>([])
  const plans = list.entries.filter((entry) => entry.kind === 'plan' && entry.districtId === districtId)
  const compared = picked.filter((id) => plans.some((plan) => plan.id === id))
  const documents = usePlansOf(districtId, true)
  const fires = firesOf(district, documents)
  const kept = useKeptAnswers(district, documents)
  const open = (id: string, inDistrict = districtId) => { router.push(screenHref('plan', inDistrict, id)) }

  const begin = useNewPlan(districtId, plans.length)
  const create = async (plan: Plan, label: string) => {
    const refused = await getClient().create(plan, { label })
    if (!tellRefused(refused)) open(plan.id)
  }
  const duplicate = async (id: string) => {
    const plan = await readyDocument<Plan>(id)
    if (plan) await create(copyOfPlan(plan, say('plan.copy-name', { name: plan.name }), () => getClient().newId()), say('plan.duplicate'))
  }
  const exportPlan = async (id: string, name: string) => {
    const plan = await readyDocument<Plan>(id)
    if (!plan || !district) return
    const bare = bundleFromDocuments(district, plan)
    const made = await makeWholeBundle(bare)
    const { bundle, lacks } = 'code' in made ? { bundle: bare, lacks: ['ways', 'heights'] as const } : made
    saveFile(`${name}.json`, JSON.stringify(bundle, null, 2))
    if (lacks.length > 0) toast({ text: say('plan.export.lacks', { file: `${name}.json`, ways: lacks.includes('ways') ? 'yes' : 'no', heights: lacks.includes('heights') ? 'yes' : 'no' }) })
  }
  const openFile = async (chosen: File | undefined) => {
    if (!chosen) return
    if (chosen.size > MOST_BYTES) { toast({ text: say('issue.file-too-big', { file: chosen.name, size: chosen.size, limit: MOST_BYTES }), look: 'danger' }); return }
    let json: unknown
    try {
      json = JSON.parse(await chosen.text())
    } catch (error) {
      toast({ text: say('issue.file-not-json', { file: chosen.name, reason: (error as Error).message }), look: 'danger' })
      return
    }
    const { isBundle, readBundle } = await import('@/lib/plan/read-bundle')
    const read = readBundle(json)
    if (!isBundle(read)) {
      const [first] = read
      toast({ text: `${chosen.name}: ${first ? sayIssue(first, () => undefined, system) : ''}`, look: 'danger' })
      return
    }
    const made = documentsFromBundle(read, () => getClient().newId())
    const refused = await getClient().create([made.district, made.plan], { label: say('plan.import') })
    if (!tellRefused(refused)) open(made.plan.id, made.district.id)
  }

  return (
    <Shell {...(district && { district: { id: districtId, name: district.name } })} screen="plan" actions={<UndoButtons />}>
      <div className={styles.page}>
        <header className={styles.head}>
          <h1 className={styles.title}>{say('plan.title')}</h1>
          <Button look="primary" icon="add" label={say('plan.new')} onClick={() => { void begin() }} />
          {plans.length > 1 && (compared.length > 1 ? <ButtonLink href={compareHref(districtId, compared)} label={say('compare.open')} /> : <Button disabled label={say('compare.open')} aria-describedby="compare-why" />)}
          <Button label={say('plan.import')} onClick={() => file.current?.click()} />
          <input ref={file} type="file" accept=".json,application/json" hidden aria-label={say('plan.import')} onChange={(event) => { void openFile(event.target.files?.[0]); event.target.value = '' }} />
        </header>
        {plans.length > 1 && compared.length < 2 && <p id="compare-why" className={styles.when}>{say('compare.pick-two', { most: MOST_PLANS })}</p>}
        {plans.some(({ id }) => !kept.has(id)) && <p className={styles.when}>{say('plan.list.flow.why')}</p>}
        {plans.length === 0
          ? <EmptyState title={say(list.status === 'loading' ? 'plan.loading' : list.status === 'unreachable' ? 'plan.unreachable' : 'plan.list.empty')} {...(list.status === 'ready' && { text: say('plan.list.empty.text') })} />
          : (
            <DocumentList>
              {plans.map(({ id, name, updatedAt }) => (
                <DocumentRow
                  key={id} href={screenHref('plan', districtId, id)} name={name}
                  figure={kept.has(id) ? flowWords(kept.get(id), fires.get(id), system) : undefined}
                  facts={[!kept.has(id) && flowWords(undefined, fires.get(id), system), fires.has(id) && fireWords(fires.get(id), system), updatedAt && say('plan.changed-on', { day: formatDay(updatedAt) })]}
                  pick={(
                    <label className={styles.pick}>
                      <input
                        type="checkbox" aria-label={say('compare.pick', { name })} checked={picked.includes(id)} disabled={!picked.includes(id) && picked.length >= MOST_PLANS}
                        onChange={(event) => { setPicked(event.target.checked ? [...picked, id] : picked.filter((one) => one !== id)) }}
                      />
                    </label>
                  )}
                >
                  <Menu
                    label={say('plan.more')} fullLabel={say('plan.more-of', { name })} size="s" look="quiet"
                    items={[
                      { id: 'duplicate', label: say('plan.duplicate'), onSelect: () => { void duplicate(id) } },
                      { id: 'export', label: say('plan.export'), onSelect: () => { void exportPlan(id, name) } },
                      { id: 'delete', label: say('plan.delete'), icon: 'trash', isDanger: true, onSelect: () => { void putAway(id, say('plan.delete'), say('plan.deleted', { name })) } },
                    ]}
                  />
                </DocumentRow>
              ))}
            </DocumentList>
          )}
        <PutAwayList districtId={districtId} kinds={['plan']} />
      </div>
    </Shell>
  )
}
