import type { EditableDocument } from '@/lib/plan'
import { getClient } from '../_client'

/** A document once it has come; undefined when it will not. */
export function readyDocument<D extends EditableDocument>(id: string): Promise<D | undefined> {
  const store = getClient().open(id)
  return new Promise((resolve) => {
    const look = () => {
      const { status, doc } = store.view()
      if (status === 'loading') return
      stop()
      resolve(status === 'ready' ? (doc as D | undefined) : undefined)
    }
    const stop = store.subscribe(look)
    look()
  })
}
