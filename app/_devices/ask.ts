import { say } from '../_text'
import '../_text/areas/devices'

/** What the server said: a value, or a sentence that says why not. */
export type Asked<T> = { value: T } | { sentence: string }

/** Asks the server for one of the things about other devices. */
export async function ask<T>(path: string, method: 'GET' | 'POST' | 'PUT' | 'DELETE', body?: unknown, otherwise = say('devices.failed')): Promise<Asked<T>> {
  const response = await fetch(path, { method, ...(body !== undefined && { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }) }).catch(() => undefined)
  if (!response) return { sentence: otherwise }
  const answer = response.status === 204 ? undefined : ((await response.json().catch(() => undefined)) as { error?: { sentence: string } } | undefined)
  return response.ok ? { value: answer as T } : { sentence: answer?.error?.sentence ?? otherwise }
}
