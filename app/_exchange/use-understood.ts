'use client'

import { useDeferredValue, useMemo, useState } from 'react'
import type { EvidenceMark } from '@/lib/evidence'
import { guessColumns, isOwn, isPlanList, understand, type ColumnUse, type FoundFile, type ItemList, type Mapping, type Understood } from '@/lib/exchange'
import type { District, Plan } from '@/lib/plan'
import { usePlan } from '../_client'
import { fieldName, say } from '../_text'
import '../_text/areas/exchange'
import { useUnitSystem } from '../_ui/unit-system-context'
import { unnamed } from './exchange-words'

export type FileChoices = {
  readonly list: ItemList
  readonly planId: string | undefined
  readonly kind: string | undefined
  readonly decimal: '.' | ','
  readonly isSwapped: boolean
  readonly mark: EvidenceMark
  readonly columns: Readonly<Record<string, ColumnUse>>
}

export type FileStudy = {
  readonly choices: FileChoices
  readonly set: (change: Partial<FileChoices>) => void
  /** Some features are another's: they need a mapping. */
  readonly needsMapping: boolean
  /** Something in it belongs to a plan. */
  readonly needsPlan: boolean
  readonly plan: Plan | undefined
  readonly understood: Understood
}

/** What a file holds, as it is understood by what a person says of it; begun with what its names and cells suggest. */
export function useUnderstood(district: District, file: FoundFile, fileName: string): FileStudy {
  const [system] = useUnitSystem()
  const guess = (list: ItemList) => guessColumns(file.columns, { list, isMetric: system !== 'us', features: file.features, labelOf: fieldName })
  const [choices, setChoices] = useState<FileChoices>(() => {
    const list = file.features.every(({ shape }) => shape?.kind === 'line') ? 'legNotes' as const : 'sources' as const
    return { list, planId: undefined, kind: undefined, decimal: file.decimal, isSwapped: false, mark: 'assumed', columns: guess(list) }
  })
  const plan = usePlan(choices.planId).doc
  const needsMapping = file.features.some((feature) => !isOwn(feature))
  const needsPlan = (needsMapping && isPlanList(choices.list)) || file.features.some((feature) => isOwn(feature) && (isPlanList(String(feature.values.list)) || feature.values.list === 'fireGround'))
  const set = (change: Partial<FileChoices>): void => { setChoices({ ...choices, ...change, ...(change.list && change.list !== choices.list && { columns: guess(change.list) }) }) }
  const asked = useDeferredValue(choices)
  const understood = useMemo(() => {
    const { list, kind, decimal, isSwapped, mark, columns } = asked
    const mapping: Mapping = { list, decimal, columns, isSwapped, ...(kind !== undefined && { kind }) }
    return understand(file, {
      target: { district, ...(plan && { plan }) }, ...(needsMapping && { mapping }),
      evidence: { mark, source: say('exchange.known.source', { file: fileName.slice(0, 200) }) }, nameOf: unnamed,
    })
  }, [asked, district, file, fileName, needsMapping, plan])
  return { choices, set, needsMapping, needsPlan, plan, understood }
}
