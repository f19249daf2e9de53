import type { Evidence, EvidenceMark } from '@/lib/evidence'
import type { Unit } from '@/lib/units'
import { entryText, parseQuantity, say } from '../_text'
import type { UnitSystem } from '../_text'
import { saidMark, typedEvidence, type SaidMarks, type StandIn } from './typed-evidence'

/** A quantity as a document keeps it: the number, and how it is known. */
export type StoredQuantity = { readonly value?: number | undefined; readonly evidence?: Evidence | undefined }

export type DraftRules = {
  /** Name of the field, for the sentence of a refusal. */
  field: string
  unit: Unit
  system: UnitSystem
  min?: number | undefined
  max?: number | undefined
  isRequired?: boolean | undefined
  /** What is used while nobody has said. */
  standIn?: StandIn | undefined
  /** How figures are known, where somebody has said. */
  said?: SaidMarks | undefined
}

export type DraftOutcome =
  | { readonly kind: 'same' }
  | { readonly kind: 'changed'; readonly stored: StoredQuantity }
  | { readonly kind: 'refused'; readonly sentence: string }

const isClose = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b))

/**
 * Text of the field when nobody is typing in it: what was typed, as long as it still means the stored
 * value in the units in use; else the value. `hasOwnUnit` says that the text names its unit itself.
 */
export function shownEntry({ value, evidence }: StoredQuantity, unit: Unit, system: UnitSystem): { text: string; hasOwnUnit: boolean } {
  if (value === undefined) return { text: '', hasOwnUnit: false }
  const entered = evidence?.entered
  if (entered !== undefined) {
    const parsed = parseQuantity(entered, unit, system, { min: -Infinity, max: Infinity })
    if (parsed.kind === 'value' && isClose(parsed.value, value)) return { text: parsed.entered, hasOwnUnit: /[^\d\s.,:/+\-−½¼¾⅛⅜⅝⅞⅓⅔]/.test(entered) }
  }
  return { text: entryText(value, unit, system), hasOwnUnit: false }
}

/**
 * What leaving the field with this text means. A new figure is no longer known the way the old one was:
 * its evidence starts anew by `typedEvidence`, with the text as typed.
 */
export function outcomeOf(text: string, stored: StoredQuantity, rules: DraftRules): DraftOutcome {
  const { field, unit, system, min, max, isRequired = false, standIn, said = {} } = rules
  if (text.trim() === shownEntry(stored, unit, system).text) return { kind: 'same' }
  const parsed = parseQuantity(text, unit, system, { field, ...(min !== undefined && { min }), ...(max !== undefined && { max }) })
  if (parsed.kind === 'refused') return parsed
  if (parsed.kind === 'absent') {
    if (isRequired) return { kind: 'refused', sentence: say('entry.required', { field }) }
    return stored.value === undefined ? { kind: 'same' } : { kind: 'changed', stored: {} }
  }
  const isSameFigure = stored.value !== undefined && isClose(parsed.value, stored.value)
  const evidence: Evidence = { ...(isSameFigure && stored.evidence && said.chosen === undefined ? stored.evidence : typedEvidence(parsed.value, standIn, said)), entered: parsed.entered }
  return { kind: 'changed', stored: { value: parsed.value, evidence } }
}

/** What has been said of the text as it stands; undefined while nobody has said, and it would count as assumed. */
export function markOfDraft(text: string, { value, evidence }: StoredQuantity, { unit, system, standIn, said = {} }: Pick<DraftRules, 'unit' | 'system' | 'standIn' | 'said'>): EvidenceMark | undefined {
  const parsed = parseQuantity(text, unit, system, { min: -Infinity, max: Infinity })
  if (parsed.kind !== 'value') return said.chosen ?? said.usual
  if (said.chosen === undefined && evidence && value !== undefined && isClose(parsed.value, value)) return evidence.mark
  return saidMark(parsed.value, standIn, said)
}
