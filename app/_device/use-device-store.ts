'use client'

import { useCallback, useEffect, useState } from 'react'
import { getOutbox, Unreachable, useSaveState } from '../_client'
import { dropDistrict, keepDistrict } from '../_shell/keep-district'
import { say } from '../_text'
import { readKeptDistricts, type KeptDistrict } from './kept-state'

/** Room on the device as the browser tells of it; what it does not tell is absent. */
export type DeviceRoom = { used?: number; most?: number; isLasting?: boolean }

async function readRoom(): Promise<DeviceRoom> {
  if (!('storage' in navigator)) return {}
  const { usage, quota } = await navigator.storage.estimate().catch(() => ({ usage: undefined, quota: undefined }))
  const isLasting = await navigator.storage.persisted?.().catch(() => undefined)
  return { ...(usage !== undefined && { used: usage }), ...(quota !== undefined && { most: quota }), ...(isLasting !== undefined && { isLasting }) }
}

/** What the device's page shows, and what it can do. */
export function useDeviceStore() {
  const [kept, setKept] = useState<readonly KeptDistrict[]>()
  const [unsettledIds, setUnsettledIds] = useState<readonly string[]>([])
  const [room, setRoom] = useState<DeviceRoom>()
  const [error, setError] = useState<string>()
  const [working, setWorking] = useState<{ name: string; share: number }>()
  const { unsentCount, conflictCount } = useSaveState()

  const read = useCallback(async () => {
    try {
      const [districts, now] = [await readKeptDistricts(), await readRoom()]
      setKept(districts)
      setUnsettledIds(await getOutbox().docIds())
      setRoom(now)
    } catch (why) {
      setError(say('device.unreadable', { reason: String(why) }))
    }
  }, [])
  useEffect(() => { void Promise.resolve().then(read) }, [read, unsentCount, conflictCount])

  const keep = useCallback(async ({ id, name }: KeptDistrict) => {
    setError(undefined)
    setWorking({ name, share: 0 })
    try {
      await keepDistrict(id, (done, of) => { setWorking({ name, share: of === 0 ? 1 : done / of }) })
    } catch (why) {
      setError(why instanceof Unreachable ? say('device.keep.unreachable', { district: name }) : say('device.keep.failed', { district: name, reason: String(why) }))
    }
    setWorking(undefined)
    await read()
  }, [read])

  const drop = useCallback(async ({ id }: KeptDistrict) => {
    setError(undefined)
    await dropDistrict(id)
    await read()
  }, [read])

  const askToLast = useCallback(async () => {
    const isGiven = await navigator.storage.persist().catch(() => false)
    if (!isGiven) setError(say('device.room.refused'))
    await read()
  }, [read])

  return { kept, unsettledIds, room, error, working, keep, drop, askToLast }
}
