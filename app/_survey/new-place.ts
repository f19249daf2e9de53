import type { Evidence } from '@/lib/evidence'
import { distanceM, type Point } from '@/lib/geo'
import { collectionOf, type District, type EditBody, type SurveyKind } from '@/lib/plan'
import { feetFromMetres } from '@/lib/units'
import { say } from '../_text'
import '../_text/areas/survey'

/** A draft site placed this near a source stands on it. */
const BANK_REACH_FT = 800

export type NewPlace = { kind: SurveyKind; point: Point; sourceId?: string | undefined; pointEvidence?: Evidence | undefined }

/** The edit that adds a place of the survey; a draft site goes to the source given, else to the nearest one within reach. */
export function newPlaceEdit({ kind, point, sourceId, pointEvidence }: NewPlace, district: District, newId: () => string): EditBody & { kind: 'addItem' } {
  const number = district[collectionOf[kind]].length + 1
  const own = kind === 'source' ? { kind: 'pond' } : kind === 'draftSite' ? bankOf(district, point, sourceId) : {}
  return {
    kind: 'addItem',
    collection: collectionOf[kind],
    item: { id: newId(), name: say(`survey.new-name.${kind}`, { number }), point, ...own, ...(pointEvidence && { evidence: { point: pointEvidence } }) },
  }
}

function bankOf(district: District, point: Point, sourceId: string | undefined): { sourceId?: string } {
  if (sourceId !== undefined) return { sourceId }
  const [nearest] = district.sources
    .map((source) => ({ id: source.id as string, away_ft: feetFromMetres(distanceM(source.point, point)) }))
    .filter(({ away_ft }) => away_ft <= BANK_REACH_FT)
    .sort((a, b) => a.away_ft - b.away_ft)
  return nearest ? { sourceId: nearest.id } : {}
}
