'use client'

import { createContext, use, useMemo, type ReactNode } from 'react'
import type { Evidence } from '@/lib/evidence'
import type { DocumentKind } from '@/lib/plan'
import { getClient } from '../_client'
import { fieldLabel, say } from '../_text'
import { UsualMarkProvider } from '../_ui/usual-mark'
import { useTellRefused } from '../_ui/use-tell-refused'

/** The item whose fields stand below: of a list of a document, or the document itself. */
export type EditedItem = {
  docId: string
  docKind: DocumentKind
  collection?: string
  item: Readonly<Record<string, unknown>> & { readonly id: string; readonly evidence?: Readonly<Record<string, Evidence>> }
}

type Value = EditedItem & {
  /** Field of the item that holds the fields below, such as `suction`. */
  part?: string

  /** Sets fields, with their evidence where given; undefined takes one away. A refusal is told in a line. */
  set: (fields: Record<string, unknown>, evidence?: Record<string, Evidence | undefined>, label?: string) => void
}

const ItemContext = createContext<Value | undefined>(undefined)

/** For parts of an item, whose fields are kept inside one of its own. */
export function ItemContextProvider({ value, children }: { value: Value; children: ReactNode }) {
  return <ItemContext value={value}>{children}</ItemContext>
}

/**
 * Gives the fields inside it the item they edit.
 *
 * @param onSet takes the place of setting the item's fields, for an item that is not in the document yet
 */
export function ItemFields({ docId, docKind, collection, item, onSet, children }: EditedItem & { onSet?: Value['set']; children: ReactNode }) {
  const tellRefused = useTellRefused()
  const value = useMemo<Value>(() => ({
    docId, docKind, item, ...(collection !== undefined && { collection }),
    set: onSet ?? ((fields, evidence, label) => {
      const names = Object.keys(fields)
      const refused = getClient().edit(docId, {
        kind: 'setFields',
        ...(collection !== undefined && { collection, id: item.id }),
        set: withNulls(fields),
        ...(evidence && { evidence: withNulls(evidence) }),
      }, { label: label ?? say('entry.changed', { field: names.map(fieldLabel).join(', ') }) })
      tellRefused(refused)
    }),
  }), [docId, docKind, collection, item, onSet, tellRefused])
  return <ItemContext value={value}><UsualMarkProvider itemId={item.id}>{children}</UsualMarkProvider></ItemContext>
}

/** @throws Error outside `ItemFields` */
export function useItem(): Value {
  const value = use(ItemContext)
  if (!value) throw new Error('a field must stand inside ItemFields')
  return value
}

const withNulls = (fields: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).map(([field, value]) => [field, value ?? null]))
