import type { Devices } from '../../_devices/devices'
import { listDocuments } from '../documents'
import type { Database } from '../open-database'
import { listGrants } from './grants'
import { findNetworkState } from './network'

/** What the page about other devices shows. */
export async function loadDevices(database: Database): Promise<Devices> {
  const districts = await listDocuments(database, { kind: 'district' })
  const grants = await listGrants(database)
  const seated = new Set(grants.flatMap(({ scope }) => (scope.kind === 'seat' ? [scope.exerciseId] : [])))
  const exercises = seated.size > 0 ? (await listDocuments(database, { kind: 'exercise' })).filter(({ id }) => seated.has(id)) : []
  const names = (process.env.MILLRACE_NAMES ?? '').split(',').map((name) => name.trim()).filter(Boolean)
  return {
    network: findNetworkState() ?? null,
    hosted: process.env.MILLRACE_HOSTED === '1' ? names : [],
    districts: districts.map(({ id, name }) => ({ id, name })),
    exercises: exercises.map(({ id, name }) => ({ id, name })),
    grants,
  }
}
