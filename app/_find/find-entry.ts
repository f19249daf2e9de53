import type { IconName } from '../_look/icon'
import type { Theme } from '../_look/theme'
import type { UnitSystem } from '../_text'

/** Groups of what can be found, in the order of the list. */
export const findGroups = ['here', 'plan', 'exercise', 'log', 'place', 'resource', 'site', 'act', 'help', 'elsewhere'] as const
export type FindGroup = (typeof findGroups)[number]

/**
 * Something one can go to by its name. `note` tells apart what has one name: its kind and its district. `key` is its own
 * among all of them: a copy of a district holds the ids of what it was copied from.
 */
export type FindEntry = {
  readonly key: string; readonly id: string; readonly group: FindGroup; readonly label: string; readonly note: string; readonly href: string; readonly icon: IconName
  /** Other words by which it is looked for; not shown. */
  readonly also?: string
  /** What is done, in place of going there. */
  readonly act?: FindAct
}

/** Done from the list itself. */
export type FindAct = { readonly kind: 'undo' | 'redo' } | { readonly kind: 'units'; readonly system: UnitSystem } | { readonly kind: 'theme'; readonly theme: Theme }

/** With the district it belongs to, by which the nearest come first. */
export type Located = Omit<FindEntry, 'key'> & { districtId: string | undefined }
