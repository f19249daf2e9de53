import { resourcesOf, placesOf, type District, type Plan } from '@/lib/plan'
import type { DocumentEntry } from '../_client'
import { exchangeHref } from '../_links/exchange-href'
import { exerciseHref } from '../_links/exercise-href'
import { logHref } from '../_links/log-href'
import { partHref } from '../_links/part-href'
import { planPageHref, planPages } from '../_links/plan-pages'
import { itemHref, screenHref, screenIcons, screens } from '../_links/screens'
import { say } from '../_text'
import '../_text/areas/help'
import '../_text/areas/exchange'
import '../_text/areas/resources'
import '../_text/areas/survey'
import '../_text/areas/find'
import type { FindEntry, Located } from './find-entry'
import { actEntries, helpEntries } from './find-helps'

/** What there is to find: `plans` are those whose sites are wanted; `here` is what the screen shows. */
export type FindScope = {
  readonly entries: readonly DocumentEntry[]
  readonly districts: readonly District[]
  readonly plans: readonly Plan[]
  readonly here: { readonly districtId?: string | undefined; readonly planId?: string | undefined }
}

const note = (...parts: readonly (string | undefined)[]): string => parts.filter((part) => part !== undefined && part !== '').join(' · ')

/** Everything with a name that one can go to, what lies nearest to the screen first. */
export function findEntries(scope: FindScope): FindEntry[] {
  const { entries, here } = scope
  const there = entries.filter(({ deletedAt }) => deletedAt === undefined)
  const names = new Map(there.map(({ id, name }): [string, string] => [id, name]))
  const nameOf = (id: string | undefined): string | undefined => (id === undefined ? undefined : names.get(id))
  const nearFirst = <T extends { districtId: string | undefined }>(list: readonly T[]): T[] => [...list].sort((a, b) => Number(b.districtId === here.districtId) - Number(a.districtId === here.districtId))
  return [
    ...pagesHere(here, nameOf),
    ...nearFirst(there.flatMap((entry) => documentEntry(entry, nameOf))),
    ...nearFirst(scope.districts.flatMap((district) => [...placeEntries(district), ...resourceEntries(district)])),
    ...nearFirst(scope.plans.flatMap(siteEntries)),
    ...actEntries(here.districtId, nameOf),
    ...helpEntries(),
    ...pagesElsewhere(here),
    ...(here.districtId === undefined ? there.flatMap(({ id, kind }) => (kind === 'district' ? pagesOf(id, nameOf(id), 'elsewhere') : [])) : []),
  ].map(({ districtId, ...entry }) => ({ key: [districtId, entry.group, entry.id].join('/'), ...entry }))
}

function pagesHere({ districtId, planId }: FindScope['here'], nameOf: (id: string | undefined) => string | undefined): Located[] {
  if (districtId === undefined) return []
  const ofPlan = planId === undefined ? [] : planPages.map((page): Located => ({
    id: `page-${page}`, group: 'here', label: say(`plan.page.${page}`), note: note(nameOf(planId)), also: say(`find.also.page.${page}`), href: planPageHref(page, districtId, planId), icon: 'plan', districtId,
  }))
  return [...ofPlan, ...pagesOf(districtId, nameOf(districtId), 'here', planId === undefined)]
}

/** Screens of a district; where no plan is open, the pages of one too, by way of the plans. */
function pagesOf(districtId: string, name: string | undefined, group: 'here' | 'elsewhere', hasPlanPages = true): Located[] {
  return [
    ...screens.map((screen): Located => ({ id: `screen-${screen}`, group, label: say(`shell.${screen}`), note: note(name), also: say(`find.also.screen.${screen}`), href: screenHref(screen, districtId), icon: screenIcons[screen], districtId })),
    { id: 'page-exchange', group, label: say('exchange.title'), note: note(name), also: say('find.also.exchange'), href: exchangeHref(districtId), icon: 'move', districtId },
    ...(hasPlanPages ? planPages : []).map((page): Located => ({
      id: `page-${page}`, group: 'elsewhere', label: say(`plan.page.${page}`), note: note(say('find.of-plan'), name), also: say(`find.also.page.${page}`), href: screenHref('plan', districtId), icon: 'plan', districtId,
    })),
  ]
}

function documentEntry({ id, kind, name, districtId }: DocumentEntry, nameOf: (id: string | undefined) => string | undefined): Located[] {
  if (kind === 'district') return [{ id, group: 'elsewhere', label: name, note: say('find.district'), href: screenHref('survey', id), icon: 'survey', districtId: id }]
  if (districtId === undefined) return []
  if (kind === 'plan') return [{ id, group: 'plan', label: name, note: note(nameOf(districtId)), href: screenHref('plan', districtId, id), icon: 'plan', districtId }]
  if (kind === 'log') return [{ id, group: 'log', label: name, note: note(nameOf(districtId)), href: logHref(districtId, id), icon: 'log', districtId }]
  return kind === 'exercise' ? [{ id, group: 'exercise', label: name, note: note(nameOf(districtId)), href: exerciseHref(districtId, id), icon: 'exercise', districtId }] : []
}

const placeEntries = (district: District): Located[] => placesOf(district).map(({ kind, item }) => ({
  id: item.id, group: 'place', label: item.name, note: note(say(`survey.one.${kind}`), district.name), also: say(`find.also.place.${kind}`), href: itemHref('survey', district.id, item.id), icon: 'survey', districtId: district.id,
}))

/** Kinds that some call otherwise. */
const alsoOf = (kind: string): string => (kind === 'tender' || kind === 'pumper' || kind === 'portableTank' || kind === 'hardSuction' || kind === 'hose' ? say(`find.also.resource.${kind}`) : '')

/** Stations are among the places. */
const resourceEntries = (district: District): Located[] => resourcesOf(district).filter(({ kind }) => kind !== 'station').map(({ kind, item }) => ({
  id: item.id, group: 'resource', label: item.name, note: note(say(`resources.one.${kind}`), district.name), also: alsoOf(kind), href: itemHref('resources', district.id, item.id), icon: 'resources', districtId: district.id,
}))

const siteEntries = ({ id: planId, name, districtId, fillSites, dumpSites, hoseLays }: Plan): Located[] => [
  ...fillSites.map((site): Located => ({ id: site.id, group: 'site', label: site.name, note: note(say('find.fill-site'), name), href: partHref('fill', districtId, planId), icon: 'plan', districtId })),
  ...dumpSites.map((site): Located => ({ id: site.id, group: 'site', label: site.name, note: note(say('find.dump-site'), name), href: partHref('dump', districtId, planId), icon: 'plan', districtId })),
  ...(hoseLays ?? []).map((lay): Located => ({ id: lay.id, group: 'site', label: lay.name, note: note(say('find.hose-lay'), name), href: planPageHref('hose', districtId, planId), icon: 'plan', districtId })),
]

const pagesElsewhere = ({ districtId }: FindScope['here']): Located[] => [
  { id: 'home', group: 'elsewhere', label: say('shell.home'), note: '', href: '/', icon: 'home', districtId: undefined },
  { id: 'help', group: 'elsewhere', label: say('help.title'), note: '', also: say('find.also.help'), href: '/help', icon: 'note', districtId: undefined },
  { id: 'device', group: 'elsewhere', label: say('shell.save.link'), note: '', also: say('find.also.device'), href: '/device', icon: 'check', districtId: undefined },
  ...(districtId === undefined ? [{ id: 'drill', group: 'elsewhere' as const, label: say('shell.drill'), note: '', also: say('find.also.screen.drill'), href: '/drill', icon: 'drill' as const, districtId: undefined }] : []),
]
