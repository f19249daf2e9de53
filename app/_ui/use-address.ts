'use client'

import { useSearchParams } from 'next/navigation'

/**
 * What the address names after its question mark, read in the browser: the page itself is the same
 * for every such address, so that one kept copy of it serves them all without a network.
 */
export function useAddress<Name extends string>(...names: readonly Name[]): Partial<Record<Name, string>> {
  const search = useSearchParams()
  return Object.fromEntries(names.flatMap((name) => (search.has(name) ? [[name, search.get(name)]] : []))) as Partial<Record<Name, string>>
}
