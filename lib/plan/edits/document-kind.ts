/** Kinds of document that edits apply to. */
export const documentKinds = ['district', 'plan', 'exercise', 'log'] as const
export type DocumentKind = (typeof documentKinds)[number]

/** A document as edits see it: fields, and lists of items with ids. */
export type EditableDocument = { id: string; [field: string]: unknown }

/** A plan, an exercise and a log name their district; an exercise holds the bundle it is played on, a log says what it is. */
export function documentKindOf(doc: EditableDocument): DocumentKind {
  if (!('districtId' in doc)) return 'district'
  if (doc.format === 'millrace-log') return 'log'
  return 'bundle' in doc ? 'exercise' : 'plan'
}
