import { findHoseOf, findSuctionOf, lengthOf_ft } from '../../supply'
import { findDraftingPump, findDraftSite, findSource, type Bundle, type DraftingPump, type EditBody, type FillSite, type Suction } from '../../plan'
import type { Candidate, Proviso } from '../candidate'
import { assumedEffort, crewOf } from '../effort'
import { suctionOf } from './fill-site-changes'

/** Pumpers and portable pumps that stand at no site of the plan and are not the engine at the fire, strongest first. */
export function unusedPumps({ district, plan }: Bundle): DraftingPump[] {
  const used = new Set<string | undefined>([...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined))
  used.add(plan.firstDueId)
  return district.apparatus
    .flatMap((unit) => (unit.kind !== 'tender' && unit.rated_gpm && !used.has(unit.id) ? [unit] : []))
    .sort((a, b) => (b.rated_gpm ?? 0) - (a.rated_gpm ?? 0))
}

/** Another pumper at each fill and dump site, and the two of a fill and a dump site changed over. */
export function otherPumpers(bundle: Bundle): Candidate[] {
  const { plan } = bundle
  const unused = unusedPumps(bundle)
  return [
    ...plan.fillSites.flatMap((site) => (site.rate_gpm === undefined ? unused.flatMap((pump) => pumperAtFill(bundle, site, pump)) : [])),
    ...plan.dumpSites.flatMap((site) => unused.map((pump): Candidate => ({
      id: `dumpPumper:${site.id}:${pump.id}`, group: `dumpPumper:${site.id}`, kind: 'dumpPumper', subjectIds: [pump.id, site.id], values: { rated_gpm: pump.rated_gpm ?? 0 },
      edits: [{ kind: 'setFields', collection: 'dumpSites', id: site.id, set: { pumperId: pump.id } }],
      effort: { ...assumedEffort.dumpPumper, peopleCount: crewOf(pump), apparatusCount: 1 }, comes: { apparatusId: pump.id, toId: site.id },
      provisos: mutualAid(bundle, pump),
    }))),
    ...plan.fillSites.flatMap((fill) => plan.dumpSites.flatMap((dump) => swap(bundle, fill, dump))),
  ]
}

function mutualAid({ district }: Bundle, pump: DraftingPump): Proviso[] {
  return pump.mutualAid || district.stations.find(({ id }) => id === pump.stationId)?.mutualAid ? ['mutual-aid'] : []
}

/** Suction set-ups a pump could use at a site: what it carries, one line and as many as reach. */
export function suctionsOf(bundle: Bundle, site: FillSite, pump: DraftingPump): (Suction | undefined)[] {
  const draftSite = findDraftSite(bundle, site.draftSiteId)
  if (findSource(bundle, site.sourceId ?? draftSite?.sourceId)?.kind === 'pressureHydrant') return [site.suction]
  const asked = suctionOf(bundle, site, pump)
  const { intake: _intake, ...rest } = asked
  const stock = findSuctionOf(bundle, pump)
  if (!stock) return [{ ...rest, lineCount: 1 }]
  return stock.flatMap(({ size_in, length_ft }) => {
    const most = draftSite?.dryHydrant ? 1 : Math.max(1, Math.min(2, Math.floor(length_ft / asked.length_ft)))
    return Array.from({ length: most }, (_, index): Suction => ({ ...rest, size_in, lineCount: index + 1 }))
  })
}

/** What is not listed as carried, of the suction and fill line that a pump would need at a site. */
export function outfitProvisos(bundle: Bundle, site: FillSite, pump: DraftingPump, suction: Suction | undefined): Proviso[] {
  const stock = findSuctionOf(bundle, pump)
  const reaches = !suction || lengthOf_ft(stock, suction.size_in) >= suction.length_ft * (suction.lineCount ?? 1)
  const lay = site.fillLine
  const hasHose = !lay || lengthOf_ft(findHoseOf(bundle, pump), lay.size_in) >= lay.length_ft * (lay.lineCount ?? 1) * (site.bayCount ?? 1)
  return [...(reaches ? [] : (['suction-not-listed'] as const)), ...(hasHose ? [] : (['hose-of-other-pumper'] as const))]
}

function pumperAtFill(bundle: Bundle, site: FillSite, pump: DraftingPump): Candidate[] {
  return suctionsOf(bundle, site, pump).map((suction): Candidate => ({
    id: `fillPumper:${site.id}:${pump.id}:${suction?.size_in ?? ''}x${suction?.lineCount ?? ''}`, group: `fillPumper:${site.id}`, kind: 'fillPumper',
    subjectIds: [pump.id, site.id],
    values: { rated_gpm: pump.rated_gpm ?? 0, ...(suction && { size_in: suction.size_in, lineCount: suction.lineCount ?? 1 }) },
    edits: [{ kind: 'setFields', collection: 'fillSites', id: site.id, set: { pumperId: pump.id, ...(suction && { suction }) } }],
    effort: { ...assumedEffort.fillPumper, peopleCount: crewOf(pump), apparatusCount: 1 }, comes: { apparatusId: pump.id, toId: site.id },
    provisos: [...mutualAid(bundle, pump), ...outfitProvisos(bundle, site, pump, suction)],
  }))
}

function swap(bundle: Bundle, fill: FillSite, dump: { id: string; pumperId?: string }): Candidate[] {
  const there = findDraftingPump(bundle, fill.pumperId)
  const here = findDraftingPump(bundle, dump.pumperId)
  if (!there || !here || fill.rate_gpm !== undefined || here.id === bundle.plan.firstDueId || there.id === bundle.plan.firstDueId) return []
  return suctionsOf(bundle, fill, here).map((suction): Candidate => {
    const edits: EditBody[] = [
      { kind: 'setFields', collection: 'fillSites', id: fill.id, set: { pumperId: here.id, ...(suction && { suction }) } },
      { kind: 'setFields', collection: 'dumpSites', id: dump.id, set: { pumperId: there.id } },
    ]
    return {
      id: `swapPumpers:${fill.id}:${dump.id}:${suction?.size_in ?? ''}x${suction?.lineCount ?? ''}`, group: `swapPumpers:${fill.id}:${dump.id}`, kind: 'swapPumpers',
      subjectIds: [here.id, there.id, fill.id, dump.id], values: {}, edits,
      effort: { ...assumedEffort.swapPumpers, apparatusCount: 0 }, provisos: outfitProvisos(bundle, fill, here, suction),
    }
  })
}
