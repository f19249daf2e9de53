import { useEffect, useRef, useState } from 'react'
import { ARCHIVE_LIMIT_MB } from '../_server/limits'
import { say } from '../_text'
import '../_text/areas/archive'

export type RestoredDistrict = { outcome: 'restored' | 'copied' | 'already-here'; districtId: string; name: string; planCount: number; missing: ('roads' | 'map' | 'terrain')[] }

export type RestoreState =
  | { kind: 'idle' }
  | { kind: 'sending'; file: File; share: number }
  | { kind: 'checking'; file: File }
  | { kind: 'done'; restored: RestoredDistrict }
  | { kind: 'failed'; file: File; sentence: string; canCopy: boolean }

/** Sends an archive to the server and tells how far it is. A request of the older kind: the newer one does not say how much was sent. */
export function useRestore(onDone: () => void) {
  const [state, setState] = useState<RestoreState>({ kind: 'idle' })
  const sending = useRef<XMLHttpRequest>(undefined)
  useEffect(() => () => sending.current?.abort(), [])

  const restore = (file: File, asCopy = false): void => {
    const fail = (sentence: string, canCopy = false) => { setState({ kind: 'failed', file, sentence, canCopy }) }
    if (file.size > ARCHIVE_LIMIT_MB * 1024 * 1024) return fail(say('archive.too-big', { file: file.name, limit_MB: ARCHIVE_LIMIT_MB }))
    const request = new XMLHttpRequest()
    sending.current = request
    request.open('POST', `/api/archives${asCopy ? '?copy=1' : ''}`)
    request.setRequestHeader('Content-Type', 'application/zip')
    request.responseType = 'json'
    request.upload.onprogress = ({ loaded, total }) => { setState({ kind: 'sending', file, share: total > 0 ? loaded / total : 0 }) }
    request.upload.onload = () => { setState({ kind: 'checking', file }) }
    request.onerror = () => { fail(say('archive.unreachable')) }
    request.onabort = () => { setState({ kind: 'idle' }) }
    request.onload = () => {
      if (request.status === 200 || request.status === 201) {
        setState({ kind: 'done', restored: request.response as RestoredDistrict })
        onDone()
        return
      }
      const { error } = (request.response ?? {}) as { error?: { code: string; sentence: string } }
      fail(error?.sentence ?? say('archive.unreachable'), error?.code === 'archive-here')
    }
    setState({ kind: 'sending', file, share: 0 })
    request.send(file)
  }
  return { state, restore, stop: () => sending.current?.abort() }
}
