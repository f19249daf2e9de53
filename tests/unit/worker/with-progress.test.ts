import { expect, test, vi } from 'vitest'
import { withProgress } from '@/app/_worker/with-progress'

test('what is told while the work goes on is passed on, and nothing of it after the result or a failure', async () => {
  const heard = vi.fn()
  let tell: (share: number) => void = () => undefined
  const done = await withProgress(heard, (say: (share: number) => void) => {
    tell = say
    say(0.5)
    return Promise.resolve('found')
  })
  tell(0.96)
  expect(done).toBe('found')
  expect(heard.mock.calls).toEqual([[0.5]])

  await expect(withProgress(heard, (say: (share: number) => void) => {
    tell = say
    return Promise.reject(new Error('broken'))
  })).rejects.toThrow('broken')
  tell(0.9)
  expect(heard).toHaveBeenCalledTimes(1)
})
