import type { District } from '@/lib/plan'
import { getClient } from '../_client'
import { say, sayIssue } from '../_text'
import type { UnitSystem } from '../_text'
import '../_text/areas/home'

export type Created = { readonly id: string } | { readonly sentence: string }

/** A district of which only the name is known. */
export function emptyDistrict(id: string, name: string, system: UnitSystem): District {
  return {
    format: 'millrace-district',
    version: 1,
    id,
    name,
    units: system === 'us' ? 'us' : 'metric',
    stations: [],
    sources: [],
    draftSites: [],
    hazards: [],
    roadNotes: [],
    apparatus: [],
    equipment: [],
  }
}

/** Keeps a new district of that name on the server; else a sentence says why not. */
export async function createDistrict(name: string, system: UnitSystem): Promise<Created> {
  const client = getClient()
  const id = client.newId()
  const refused = await client.create(emptyDistrict(id, name, system), { label: say('home.create') })
  return refused ? { sentence: sayIssue(refused, () => undefined, system) } : { id }
}
