/** The map: the only part that knows Leaflet. */
export { DistrictMap } from './district-map'
export { drawnDistrict, drawnDistrictFromBlob, type DrawnDistrict } from './drawn-district'
export { useDrawnDistrict, type DrawnDistrictState } from './use-drawn-district'
export type { MapHandle, MapRoute, MapSite } from './map-types'
