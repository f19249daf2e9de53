import type { Issue } from '@/lib/issue'
import type { DocumentView } from './document-view'

export type SaveState = {
  /**
   * `waiting`: on this device, for the server is away; `away`: nothing unsent, but what is shown is this device's;
   * `unkept`: in this window alone; `unsettled`: a person has to choose between two values.
   */
  state: 'saved' | 'away' | 'saving' | 'waiting' | 'unkept' | 'unsettled' | 'refused'
  unsentCount: number
  unkeptCount: number
  conflictCount: number
  /** Edits the server or a change elsewhere did not let stand, newest last, until dismissed. */
  refusals: readonly { id: string; docId: string; label: string; issue: Issue }[]
}

export const allSaved: SaveState = { state: 'saved', unsentCount: 0, unkeptCount: 0, conflictCount: 0, refusals: [] }

const sumOf = (views: readonly DocumentView[], count: (view: DocumentView) => number): number => views.reduce((sum, view) => sum + count(view), 0)

/** Whether all is saved, and what is not: of several things the one that needs a person first. */
export function saveStateOf(views: readonly DocumentView[], refusals: SaveState['refusals'], isAway: boolean): SaveState {
  const counts = {
    unsentCount: sumOf(views, ({ unsentCount }) => unsentCount),
    unkeptCount: sumOf(views, ({ unkeptCount }) => unkeptCount),
    conflictCount: sumOf(views, ({ conflicts }) => conflicts.length),
  }
  const isWaiting = views.some(({ sending }) => sending === 'waiting')
  const state = refusals.length > 0 ? 'refused'
    : isWaiting && counts.unkeptCount > 0 ? 'unkept'
      : counts.conflictCount > 0 ? 'unsettled'
        : isWaiting ? 'waiting'
          : counts.unsentCount > 0 ? 'saving'
            : isAway ? 'away' : 'saved'
  return { state, ...counts, refusals }
}
