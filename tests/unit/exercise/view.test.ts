import { expect, it } from 'vitest'
import { isSession, startSession, viewOf } from '@/lib/exercise'
import { demoBundle } from './demo-bundle'

const fillsAtDispatch = (name: Parameters<typeof demoBundle>[0]) => {
  const session = startSession(demoBundle(name))
  if (!isSession(session)) throw new Error(JSON.stringify(session))
  return viewOf(session).fills
}

it('has what flows past in a river, and never an empty source', () => {
  const [river] = fillsAtDispatch('yarrow-bank')
  expect(river!.source_gal).toBeUndefined()
  expect(river!.running_gpm).toBeGreaterThan(0)
})

it('has what is left where a source can run out', () => {
  for (const { source_gal, running_gpm } of fillsAtDispatch('school')) {
    expect(source_gal).toBeGreaterThan(0)
    expect(running_gpm).toBeUndefined()
  }
})
