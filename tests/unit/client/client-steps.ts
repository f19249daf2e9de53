// The first document waits for them; the steps below count turns, not time.
import '@/app/_client/document-rules'
import type { EditableDocument } from '@/lib/plan'
import type { Client } from '@/app/_client/client'

/** Lets everything that waits for nothing but its turn come to its end. */
export const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 60; turn += 1) await Promise.resolve()
}

export async function opened(client: Client, ...ids: string[]): Promise<Client> {
  for (const id of ids) client.open(id)
  await settled()
  return client
}

export const setLift = (lift_ft: number) => ({ kind: 'setFields' as const, collection: 'fillSites', id: 'F1', set: { lift_ft } })

export const liftOf = (doc: EditableDocument | undefined): number | undefined =>
  (doc?.fillSites as { id: string; lift_ft?: number }[] | undefined)?.find(({ id }) => id === 'F1')?.lift_ft
