import { afterEach, expect, it } from 'vitest'
import { eventText } from '@/app/_live/event-text'
import { LiveStream, type LiveState } from '@/app/_live/live-stream'

let stream: LiveStream | undefined
afterEach(() => { stream?.stop() })
const until = async (isSo: () => boolean) => { for (let i = 0; i < 400 && !isSo(); i++) await new Promise((resolve) => setTimeout(resolve, 5)) }

/** A server that answers each connection with what the test gives, and notes from which number it was asked. */
function serverThat(...answers: ((signal: AbortSignal) => Response)[]) {
  const asked: (string | undefined)[] = []
  const fetcher = (async (_url: unknown, init: RequestInit) => {
    asked.push((init.headers as Record<string, string>)['Last-Event-ID'])
    const answer = answers[Math.min(asked.length, answers.length) - 1]!
    return answer(init.signal!)
  }) as typeof fetch
  return { asked, fetcher }
}
const bodyOf = (text: string, isOpen: boolean) => (signal: AbortSignal) => new Response(new ReadableStream({
  start: (controller) => {
    controller.enqueue(new TextEncoder().encode(text))
    if (!isOpen) controller.close()
    else signal.addEventListener('abort', () => { controller.error(new Error('aborted')) })
  },
}))
const news = (id: string) => eventText({ event: 'news', id, data: '{}' })
const ready = eventText({ event: 'ready', data: '{}' })

function begin(fetcher: typeof fetch, options: { silence_ms?: number; refuse?: string } = {}) {
  const states: LiveState[] = []
  const ids: string[] = []
  stream = new LiveStream({
    url: '/x', fetcher, pauses_ms: [1], ...options, lastId: () => ids.at(-1), onState: (state) => { states.push(state) },
    onEvent: ({ event, id }) => {
      if (id === options.refuse && event === 'news') { delete options.refuse; return false }
      if (event === 'news') ids.push(id!)
    },
  })
  stream.start()
  return { states, ids }
}

it('is taken up from its last number when it breaks off, and says how it stands', async () => {
  const { asked, fetcher } = serverThat(bodyOf(news('1') + ready + news('2'), false), () => new Response(null, { status: 502 }), bodyOf(news('3') + ready, true))
  const { states, ids } = begin(fetcher)
  await until(() => ids.length === 3)
  expect(ids).toEqual(['1', '2', '3'])
  expect(asked).toEqual([undefined, '2', '2'])
  expect(states.map(({ kind }) => kind)).toEqual(['catching-up', 'catching-up', 'live', 'cut-off', 'cut-off', 'catching-up', 'live'])
  expect(states[3]).toMatchObject({ heardAt_ms: expect.any(Number) as number })
})

it('that has fallen silent counts as broken', async () => {
  const { asked, fetcher } = serverThat(bodyOf(ready, true))
  const { states } = begin(fetcher, { silence_ms: 20 })
  await until(() => asked.length >= 3)
  expect(asked.length).toBeGreaterThanOrEqual(3)
  expect(states.map(({ kind }) => kind)).toContain('cut-off')
})

it('whose reader misses something is asked for again from there', async () => {
  const { asked, fetcher } = serverThat(bodyOf(news('1') + news('3'), true), bodyOf(news('2') + ready, true))
  const { ids } = begin(fetcher, { refuse: '3' })
  await until(() => ids.length === 2)
  expect([ids, asked]).toEqual([['1', '2'], [undefined, '1']])
})

it('that is refused is not asked for again', async () => {
  const { asked, fetcher } = serverThat(() => new Response(null, { status: 401 }))
  const { states } = begin(fetcher)
  await new Promise((resolve) => setTimeout(resolve, 30))
  expect(asked.length).toBe(1)
  expect(states.at(-1)).toEqual({ kind: 'refused', status: 401 })
})
