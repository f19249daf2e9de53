'use client'

import { useMemo, useState } from 'react'
import { sheetKey, sheetsOf, type SheetRef } from '@/lib/book'
import { useDistrict, usePlansOf } from '../_client'
import { Shell } from '../_frame/shell'
import { SiteSymbol } from '../_look/site-symbol'
import { formatNumber, localDay, LOCALE, say, sayIssue } from '../_text'
import '../_text/areas/book'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { EmptyState } from '../_ui/empty-state'
import { ProgressBar } from '../_ui/progress-bar'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useAddress } from '../_ui/use-address'
import { useChoice } from '../_ui/use-choice'
import styles from './book.module.css'
import { isPaper, type Paper } from './page/paper'
import { PrintedFileRow } from './printed-file'
import { sheetGroups } from './sheet-groups'
import { usePrinting } from './use-printing'

const PAPER_COOKIE = 'millrace-paper'

/** The book of a district: which sheets, on what paper, into one file. */
export function BookScreen({ districtId }: { districtId: string }) {
  const address = useAddress('plan', 'draft')
  const view = useDistrict(districtId)
  const district = view.doc
  const found = usePlansOf(districtId, true)
  const plans = useMemo(() => [...found].sort((a, b) => a.name.localeCompare(b.name, LOCALE)), [found])
  const [system] = useUnitSystem()
  const [remembered, remember] = useChoice(PAPER_COOKIE, undefined)
  const paper: Paper = isPaper(remembered) ? remembered : system === 'us' ? 'letter' : 'a4'
  const refs = useMemo(() => (district ? sheetsOf(district, plans) : []), [district, plans])
  const groups = useMemo(() => (district ? sheetGroups(district, plans, refs) : []), [district, plans, refs])
  const asked = useMemo(() => refs.filter((ref) => isAsked(ref, address.plan, address.draft)).map(sheetKey), [refs, address.plan, address.draft])
  const [chosen, setChosen] = useState<ReadonlySet<string>>()
  const keys = chosen ?? new Set(asked)
  const isAll = refs.length > 0 && refs.every((ref) => keys.has(sheetKey(ref)))
  const [wantsFront, setWantsFront] = useState<boolean>()
  const hasFront = wantsFront ?? isAll
  const { progress, file, issue, print, stop } = usePrinting()

  if (!district) return <Shell screen="book"><EmptyState title={say(view.status === 'loading' ? 'book.loading' : 'book.missing')} /></Shell>
  const picked = refs.filter((ref) => keys.has(sheetKey(ref)))
  const set = (changed: readonly SheetRef[], isOn: boolean) => {
    const next = new Set(keys)
    for (const ref of changed) {
      if (isOn) next.add(sheetKey(ref))
      else next.delete(sheetKey(ref))
    }
    setChosen(next)
  }
  const begin = () => {
    const [only] = picked
    const title = hasFront || picked.length !== 1 || !only ? say('book.file.book', { district: district.name }) : say('book.file.sheet', { title: groups.flatMap(({ sheets }) => sheets).find(({ ref }) => ref === only)?.title ?? '', district: district.name })
    print({ district, plans, refs: picked, hasFront, paper, system, day: localDay(), title }, `${title}.pdf`)
  }
  return (
    <Shell district={{ id: districtId, name: district.name }} screen="book">
      <div className={styles.page}>
        <header className={styles.head}>
          <h1 className={styles.title}>{say('book.title')}</h1>
          <p className={styles.quiet}>{say('book.lead')}</p>
        </header>
        <section className={styles.order} aria-label={say('book.order')}>
          <Segments label={say('book.paper')} choices={[{ value: 'letter', label: say('book.paper.letter') }, { value: 'a4', label: say('book.paper.a4') }]} value={paper} onCommit={remember} />
          <CheckField label={say('book.front')} hint={say('book.front.hint')} isChecked={hasFront} onCommit={setWantsFront} />
          <Button look="primary" icon="print" label={say('book.make', { count: picked.length })} disabled={picked.length === 0 || progress !== undefined} onClick={begin} />
          <p className={styles.quiet}>{say('book.offline')}</p>
          <div className={styles.outcome} role="status">
            {progress && <ProgressBar label={say(`book.stage.${progress.stage}`, { name: progress.name })} share={progress.share} onCancel={stop} />}
            {file && <PrintedFileRow file={file} />}
            {issue && <p className={styles.failure}>{sayIssue(issue, () => undefined, system)}</p>}
          </div>
        </section>
        <section className={styles.sheets} aria-label={say('book.sheets')}>
          <div className={styles.sheetsHead}>
            <h2 className={styles.subtitle}>{say('book.sheets')}</h2>
            <Button size="s" look="quiet" label={say(isAll ? 'book.choose.none' : 'book.choose.all')} onClick={() => { set(refs, !isAll) }} />
          </div>
          {refs.length === 0 && <EmptyState title={say('book.empty')} text={say('book.empty.text')} />}
          {groups.map(({ id, title, sheets }) => (
            <fieldset key={id} className={styles.group}>
              <legend className={styles.legend}>{title}</legend>
              {sheets.map(({ ref, title: name, what, symbol, isInner }) => (
                <label key={sheetKey(ref)} className={styles.sheet} data-inner={isInner}>
                  <input type="checkbox" checked={keys.has(sheetKey(ref))} onChange={(event) => { set([ref], event.target.checked) }} />
                  <SiteSymbol kind={symbol} />
                  <span className={styles.name}>{name}</span>
                  <span className={styles.quiet}>{what}</span>
                </label>
              ))}
            </fieldset>
          ))}
          <p className={styles.quiet}>{say('book.count', { count: formatNumber(picked.length), all: formatNumber(refs.length) })}</p>
        </section>
      </div>
    </Shell>
  )
}

/** With neither a plan nor a draft site in the address the whole book is asked for. */
function isAsked(ref: SheetRef, planId: string | undefined, draftSiteId: string | undefined): boolean {
  if (planId === undefined && draftSiteId === undefined) return true
  return (ref.kind === 'draft' && ref.draftSiteId === draftSiteId) || ((ref.kind === 'plan' || ref.kind === 'fill' || ref.kind === 'dump') && ref.planId === planId)
}
