import { expect, test } from 'vitest'
import { requireNode } from '@/scripts/house/node-version.mjs'

test.each(['20.9.0', '20.20.2', '22.0.0', '24.1.0'])('Node %s is new enough', (version) => {
  expect(() => requireNode(version)).not.toThrow()
})

test.each(['20.8.1', '18.20.0', '16.0.0'])('Node %s is refused in one sentence that says what to do', (version) => {
  expect(() => requireNode(version)).toThrow(`Millrace needs Node 20.9 or newer and this is Node ${version}: install a newer Node from nodejs.org and start again.`)
})
