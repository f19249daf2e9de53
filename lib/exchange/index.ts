/**
 * Places of a district and its plans in the formats of others, out and in. Readers and writers bring libraries with
 * them and are imported by their own files, where and when they are wanted: `read-places`, `write-geojson` and its kin.
 */
export type { FoundFile } from './read-report'
export { exchangeLimits } from './exchange-limits'
export { mappableFields, plainEnds, usualUnit, type ColumnUse, type Mapping } from './mapping'
export { findField } from './list-fields'
export { guessColumns } from './guess-columns'
export { dayOrders, unitWords } from './read-cell'
export type { Problem } from './read-feature'
export { isOwn, understand, type Candidate, type Understood } from './understand'
export { defaultTaking, takeIn, takings, type Taking } from './take-in'
export { districtLists, isDistrictList, isPlanList, placeLists, planLists, type ItemList, type Place, type PlaceList } from './place'
export type { Target } from './place-item'
export { placesOf, type DrivenWay } from './places-of'
export { lossesOf, writtenFormats, type WrittenFormat } from './losses'
