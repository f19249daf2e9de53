import type { DraftSite, District, Hazard, RoadNote, Source, Station } from './documents/district'

/** Kinds of places a survey holds, in the order of the list. */
export const surveyKinds = ['source', 'draftSite', 'hazard', 'roadNote', 'station'] as const
export type SurveyKind = (typeof surveyKinds)[number]

/** List of the district that holds places of a kind. */
export const collectionOf = { source: 'sources', draftSite: 'draftSites', hazard: 'hazards', roadNote: 'roadNotes', station: 'stations' } as const

export type Place =
  | { readonly kind: 'source'; readonly item: Source }
  | { readonly kind: 'draftSite'; readonly item: DraftSite }
  | { readonly kind: 'hazard'; readonly item: Hazard }
  | { readonly kind: 'roadNote'; readonly item: RoadNote }
  | { readonly kind: 'station'; readonly item: Station }

/** Every place of a district, by kind. */
export const placesOf = (district: District): Place[] => [
  ...district.sources.map((item) => ({ kind: 'source' as const, item })),
  ...district.draftSites.map((item) => ({ kind: 'draftSite' as const, item })),
  ...district.hazards.map((item) => ({ kind: 'hazard' as const, item })),
  ...district.roadNotes.map((item) => ({ kind: 'roadNote' as const, item })),
  ...district.stations.map((item) => ({ kind: 'station' as const, item })),
]

/** A place of a district by its id. */
export const findPlaceOf = (district: District, id: string | undefined): Place | undefined => placesOf(district).find(({ item }) => item.id === id)
