'use client'

import { useCallback, useEffect, useMemo, useSyncExternalStore } from 'react'
import type { District, EditableDocument, Plan } from '@/lib/plan'
import type { DocumentList } from './client'
import { LOADING, type DocumentView } from './document-view'
import { getClient } from './live'
import { allSaved, type SaveState } from './save-state'
import type { UndoState } from './undo-stack'

const noList: DocumentList = { status: 'loading', entries: [] }
const noUndo: UndoState = { canUndo: false, canRedo: false }

/** A document as this window holds it, edits and all; loading until it comes, and while no id is given. */
export function useDocument<D extends EditableDocument = EditableDocument>(docId: string | undefined): DocumentView<D> {
  const subscribe = useCallback((listener: () => void) => (docId ? getClient().open(docId).subscribe(listener) : () => undefined), [docId])
  const view = useSyncExternalStore(subscribe, () => (docId ? getClient().view(docId) : LOADING), () => LOADING)
  return view as DocumentView<D>
}

export const useDistrict = (docId: string | undefined): DocumentView<District> => useDocument<District>(docId)
export const usePlan = (docId: string | undefined): DocumentView<Plan> => useDocument<Plan>(docId)

/** The list of documents; asked for afresh when a screen first shows it. */
export function useDocumentList(): DocumentList {
  useEffect(() => void getClient().openList(), [])
  return useSyncExternalStore(subscribeToClient, () => getClient().documentList(), () => noList)
}

/** No district has so many plans that more need be looked through. */
const MOST_PLANS = 40
const none: readonly EditableDocument[] = []

/** The plans of a district that have come so far; none while they are not wanted. */
export function usePlansOf(districtId: string, isWanted: boolean): readonly Plan[] {
  useEffect(() => { if (isWanted) void getClient().openList() }, [isWanted])
  const { entries } = useSyncExternalStore(subscribeToClient, () => getClient().documentList(), () => noList)
  const own = isWanted ? entries.filter((entry) => entry.kind === 'plan' && entry.districtId === districtId && entry.deletedAt === undefined) : []
  return useDocuments<Plan>(own.slice(0, MOST_PLANS).map(({ id }) => id))
}

/** Those of several documents that have come so far: the same array until one of them changes. Ids hold no spaces. */
export function useDocuments<D extends EditableDocument>(ids: readonly string[]): readonly D[] {
  const key = ids.join(' ')
  const store = useMemo(() => storeOf<D>(key === '' ? [] : key.split(' ')), [key])
  return useSyncExternalStore(store.subscribe, store.read, () => none as readonly D[])
}

function storeOf<D extends EditableDocument>(ids: readonly string[]): { subscribe: (listener: () => void) => () => void; read: () => readonly D[] } {
  let last: readonly D[] = []
  return {
    subscribe: (listener) => {
      const ends = ids.map((id) => getClient().open(id).subscribe(listener))
      return () => { for (const end of ends) end() }
    },
    read: () => {
      const now = ids.flatMap((id) => (getClient().view(id) as DocumentView<D>).doc ?? [])
      if (now.length !== last.length || now.some((doc, index) => doc !== last[index])) last = now
      return last
    },
  }
}

/** Whether all is saved, and what is not. */
export const useSaveState = (): SaveState => useSyncExternalStore(subscribeToClient, () => getClient().saveState(), () => allSaved)

/** What undo and redo would do; the doing is `getClient().undo()`. */
export const useUndo = (): UndoState => useSyncExternalStore(subscribeToClient, () => getClient().undoState(), () => noUndo)

const subscribeToClient = (listener: () => void) => getClient().subscribe(listener)
