import { expect, it } from 'vitest'
import { latestWins } from '@/app/_worker/latest-wins'

function manualCall() {
  const open: { args: number; answer: (value: string) => void; fail: (error: Error) => void }[] = []
  const call = (args: number) => new Promise<string>((answer, fail) => void open.push({ args, answer, fail }))
  return { open, call }
}

it('only the newest of those that wait is called; those it overtook are answered with nothing', async () => {
  const { open, call } = manualCall()
  const ask = latestWins(call)
  const answers = [1, 2, 3, 4].map((args) => ask(args))
  expect(open.map(({ args }) => args)).toEqual([1])
  open[0]!.answer('one')
  expect(await answers[0]).toBe('one')
  expect(await answers[1]).toBeUndefined()
  expect(await answers[2]).toBeUndefined()
  expect(open.map(({ args }) => args)).toEqual([1, 4])
  open[1]!.answer('four')
  expect(await answers[3]).toBe('four')
})

it('a call that fails does not stop the next', async () => {
  const { open, call } = manualCall()
  const ask = latestWins(call)
  const first = ask(1)
  const second = ask(2)
  open[0]!.fail(new Error('no'))
  await expect(first).rejects.toThrow('no')
  open[1]!.answer('two')
  expect(await second).toBe('two')
})
