import { readFileSync } from 'node:fs'
import { isBundle, readBundle, type Bundle } from '@/lib/plan'

/** A plan of the demonstration district, with its ways. */
export function demoBundle(name: 'gander-hill' | 'yarrow-bank' | 'school' = 'gander-hill'): Bundle {
  const read = readBundle(JSON.parse(readFileSync(`public/demo/bundles/${name}.json`, 'utf8')))
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}
