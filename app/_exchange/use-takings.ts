import { useState } from 'react'
import { defaultTaking, type Candidate, type Taking } from '@/lib/exchange'

export type Takings = {
  /** What becomes of the candidate of that number: as said, else as usual. */
  readonly of: (index: number) => Taking
  readonly set: (indexes: readonly number[], taking: Taking) => void
}

/** What becomes of each place that can be taken; what was said is forgotten when the file is understood anew. */
export function useTakings(candidates: readonly Candidate[]): Takings {
  const [said, setSaid] = useState<{ of: readonly Candidate[]; by: ReadonlyMap<number, Taking> }>({ of: candidates, by: new Map() })
  const by = said.of === candidates ? said.by : new Map<number, Taking>()
  return {
    of: (index) => { const candidate = candidates[index]; return by.get(index) ?? (candidate ? defaultTaking(candidate) : 'skip') },
    set: (indexes, taking) => { setSaid({ of: candidates, by: new Map([...by, ...indexes.map((index): [number, Taking] => [index, taking])]) }) },
  }
}
