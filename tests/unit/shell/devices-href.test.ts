import { expect, it } from 'vitest'
import { backFrom, devicesHref } from '@/app/_devices/devices-href'

it('leads back to the exercise it was left from, and nowhere else', () => {
  const address = '/district/ostrel-valley/exercise/primer-fails'
  expect(backFrom(new URL(devicesHref(address), 'http://station').searchParams.get('back') ?? undefined)).toBe(address)
  for (const other of [undefined, '', 'https://elsewhere.example', '//elsewhere.example/district/a/exercise/b', '/district/a/exercise/b/../../..', 'javascript:alert(1)']) expect(backFrom(other)).toBeUndefined()
})
