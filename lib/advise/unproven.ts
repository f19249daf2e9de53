import type { Trial } from './trial'

/** What somebody must look at or measure before a change is counted on, however much it would gain. */
export const unprovenKinds = ['softGround', 'softRoad', 'lift', 'volume', 'stream', 'hydrant'] as const
export type UnprovenKind = (typeof unprovenKinds)[number]

/** One such thing, and the place it is about, by its id in the changed plan. */
export type Unproven = { readonly kind: UnprovenKind; readonly subjectId: string }

const kindOfIssue: Readonly<Record<string, UnprovenKind>> = {
  'route-soft': 'softRoad', 'lift-assumed': 'lift', 'lift-doubtful': 'lift', 'source-volume-unknown': 'volume', 'source-flow-unknown': 'stream', 'hydrant-untested': 'hydrant',
}

/**
 * What a change stands on that nobody has looked at or measured and that the plan as it is does not stand on: ground or road
 * that may not bear a pumper or a full tender, a lift that is a guess, water counted as never running out for want of a figure,
 * a hydrant without a test.
 *
 * @returns each kind once a place; empty: nothing
 */
export function unprovenOf({ candidate, newIssues }: Pick<Trial, 'candidate' | 'newIssues'>): Unproven[] {
  const place = candidate.subjectIds[0] ?? ''
  const found: Unproven[] = candidate.provisos.includes('soft-ground') ? [{ kind: 'softGround', subjectId: place }] : []
  for (const { code, severity, subjectIds, values } of newIssues) {
    const kind = severity === 'warn' ? kindOfIssue[code] : undefined
    if (!kind) continue
    // A road is told by its name, which is no id.
    const subjectId = kind === 'softRoad' ? String(values['name'] ?? '') : (subjectIds[0] ?? place)
    if (!found.some((one) => one.kind === kind && one.subjectId === subjectId)) found.push({ kind, subjectId })
  }
  return found
}

export const isUnproven = (trial: Pick<Trial, 'candidate' | 'newIssues'>): boolean => unprovenOf(trial).length > 0
