import { namesOf, type Change } from '@/lib/plan'
import { isInOrder, isSession, seesMap } from '@/lib/exercise'
import { placesOf } from '@/app/_exercise/plan-places'
import type { SeatInfo } from '@/app/_seat/seat-messages'
import { say } from '@/app/_text'
import '@/app/_text/areas/exercise'
import type { Grant } from '../../_devices/devices'
import type { SeatScope } from '../../_devices/scope'
import type { Running } from './running'

const MOST_LETTERS = 120

/** Who sits at a seat, as it is written beside what is decided there: post, place and name. */
export function personAt({ scope, name }: Pick<Grant<SeatScope>, 'scope' | 'name'>, siteName: string | undefined): string {
  const post = say(`exercise.seat.${scope.role}`)
  return say('exercise.seat.person', { post: siteName === undefined ? post : say('exercise.seat.post', { post, site: siteName }), name }).slice(0, MOST_LETTERS)
}

/** The name of a seat's site in the plan as the exercise was made with it, so that it stays what it is. */
export const siteNameOf = ({ exercise: { bundle: { plan } } }: Running, siteId: string | undefined): string | undefined =>
  [...plan.fillSites, ...plan.dumpSites].find(({ id }) => id === siteId)?.name

/** What a seat may know of the exercise it is in, beside what comes about. */
export function seatInfo(running: Running, grant: Grant<SeatScope>): SeatInfo {
  const { exercise, followed: { session } } = running
  const { role, siteId } = grant.scope
  const bundle = isSession(session) ? session.now.world.bundle : exercise.bundle
  const spec = isSession(session) ? session.now.world.spec : undefined
  const { plan, district } = bundle
  const units = [plan.firstDueId, ...plan.tenders.map(({ tenderId }) => tenderId), ...plan.fillSites.map(({ pumperId }) => pumperId), ...plan.dumpSites.flatMap(({ pumperId, nurseId }) => [pumperId, nurseId]), ...(plan.hoseLays ?? []).flatMap(({ pumperIds }) => pumperIds)]
  const isWhole = (change: Change) => !isSession(session) || isInOrder(session.now.world, change)
  const isOwnWhole = siteId === undefined || isWhole(role === 'fillSite' ? { kind: 'fillRate', fillSiteId: siteId, rateShare: 1 } : { kind: 'tankLeak', dumpSiteId: siteId, leak_gpm: 0 })
  const places = [...plan.fillSites, ...plan.dumpSites, ...(plan.hoseLays ?? [])]
  const all = namesOf(bundle)
  const named = [...new Set<string>([...places.map(({ id }) => id as string), ...units.flatMap((id) => (id === undefined ? [] : [id as string]))])]
  const ids = (items: readonly { readonly id: string }[] = []) => (role === 'waterSupply' ? items.map(({ id }) => id) : [])
  const onMap = placesOf(bundle, say('plan.fire-ground'))
  return {
    seatId: grant.id, exercise: exercise.name, role, ...(siteId !== undefined && { siteId }), by: personAt(grant, siteNameOf(running, siteId)),
    names: Object.fromEntries(named.flatMap((id) => { const name = all.get(id); return name === undefined ? [] : [[id, name]] })),
    choices: { tenders: ids(spec?.tenders), fills: ids(spec?.fills), dumps: ids(spec?.dumps), lays: ids(spec?.feeds?.filter(({ id: layId }) => !isWhole({ kind: 'layRate', layId, rateShare: 1 }))) },
    ...(siteId !== undefined && { isAmiss: !isOwnWhole }),
    ...(seesMap(role) && {
      map: {
        ...(district.map && { hash: district.map.hash, attribution: district.map.attribution }),
        sites: [...onMap.sites, ...onMap.stations],
      },
    }),
  }
}
