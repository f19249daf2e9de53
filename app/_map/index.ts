/** The map: the only part that knows Leaflet. */
export { DistrictMap } from './district-map'
export { drawnDistrictFromBlob, type DrawnDistrict } from './drawn-district'
export { useDrawnDistrict } from './use-drawn-district'
export type { MapHandle, MapRoute, MapSite } from './map-types'
