import { Unreachable } from './transport'

/** A signal that comes and goes leaves requests hanging; asked again, they come through or are known not to. */
const LONGEST_MS = 20_000

/** Answers that say nothing about the request itself: asking again later may help. So may joining again, where a device is no longer let in (401): its changes are kept until then. */
export const PASSING: readonly number[] = [401, 408, 425, 429, 500, 502, 503, 504]

/** Asks the station. Rejects with `Unreachable` where no answer came, or one that says nothing about the request. */
export async function askStation(path: string, init: RequestInit | undefined, fetcher: typeof fetch): Promise<Response> {
  const response = await fetcher(path, { cache: 'no-store', signal: AbortSignal.timeout(LONGEST_MS), ...init }).catch((error: unknown) => {
    throw new Unreachable(String(error))
  })
  if (PASSING.includes(response.status)) throw new Unreachable(String(response.status))
  return response
}

export const asJson = (body: unknown): RequestInit => ({ method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) })

/** What an answer holds. A body that is not what it should be comes from something between here and the station. */
export async function readAnswer(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch (error) {
    throw new Unreachable(String(error))
  }
}
