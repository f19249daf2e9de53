import type { EvidenceMark } from '../evidence'
import type { District, Plan } from '../plan'

export type EvidenceCounts = Readonly<Record<EvidenceMark, number>> & { readonly latest?: string }

/** How many numbers of a plan and of the items it names are known in which way, and the day of the latest measurement. */
export function evidenceCounts(district: District, plan: Plan): EvidenceCounts {
  const text = JSON.stringify(plan)
  const counts = { measured: 0, computed: 0, handbook: 0, assumed: 0 }
  let latest: string | undefined
  const items = [plan, ...plan.fillSites, ...plan.dumpSites, ...plan.legNotes, ...(plan.hoseLays ?? []),
    ...[...district.sources, ...district.draftSites, ...district.hazards, ...district.apparatus, ...district.equipment].filter(({ id }) => text.includes(`"${id}"`))]
  for (const { evidence } of items) for (const { mark, on } of Object.values(evidence ?? {})) {
    counts[mark] += 1
    if (mark === 'measured' && on !== undefined && (latest === undefined || on > latest)) latest = on
  }
  return { ...counts, ...(latest !== undefined && { latest }) }
}
