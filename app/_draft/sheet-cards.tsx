'use client'

import { memo } from 'react'
import type { DraftSheet } from '@/lib/supply'
import type { DraftLinkTarget } from '../_links/draft-href'
import type { NameOf } from '../_text'
import '../_text/areas/draft'
import { IssueList } from '../_ui/issue-list'
import { say } from '../_text'
import { ClassicalCard } from './classical-card'
import { ConflictsCard } from './conflicts-card'
import { useSiteFar } from '../_survey/use-site-far'
import { LiftCard } from './lift-card'
import { PrimingCard } from './priming-card'
import { SetupsCard } from './setups-card'
import { SourceCard } from './source-card'
import { TestsCard } from './tests-card'

export type SheetCardsProps = { sheet: DraftSheet; names: NameOf; planned_gpm: number | undefined; here: DraftLinkTarget }

/** All below the answer. Kept as it stands while a slider moves: the answer and the controls come first. */
export const SheetCards = memo(function SheetCards({ sheet, names, planned_gpm, here }: SheetCardsProps) {
  const { pump, source } = sheet
  const far = useSiteFar(sheet.district, sheet.draftSite)
  const issues = far ? [far, ...sheet.issues] : sheet.issues
  return (
    <>
      {issues.length > 0 && <IssueList issues={issues} names={names} label={say('draft.issues')} />}
      <SetupsCard sheet={sheet} names={names} />
      <LiftCard sheet={sheet} />
      {source && <SourceCard key={source.id} sheet={sheet} source={source} names={names} planned_gpm={planned_gpm} />}
      {pump.kind === 'pumper' && <PrimingCard sheet={sheet} pump={pump} names={names} here={here} />}
      <TestsCard sheet={sheet} />
      <ClassicalCard sheet={sheet} />
      <ConflictsCard sheet={sheet} />
    </>
  )
})
