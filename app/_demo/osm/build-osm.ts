import type { Landscape } from '../build-landscape'
import type { Spot } from '../frame'
import { mappedStreams } from '../land/mapped-streams'
import { hydrantSpots } from '../settle/hydrants'
import { namedPlaces } from '../settle/place-names'
import { waterPoints } from '../settle/water-points'
import { OsmStore } from './osm-store'
import { addRoads } from './road-ways'

/** The landscape in the open data model: every road, stream, house and wood with ordinary open tags. */
export function buildOsm(land: Landscape): OsmStore {
  const store = new OsmStore()
  addRoads(store, land)
  addWater(store, land)
  for (const { ring, tags } of land.buildings) store.addRing(ring, tags)
  for (const { name, yard } of land.farms) store.addRing(yard, { landuse: 'farmyard', name })
  for (const { ring, tags } of land.fields) store.addRing(ring, tags)
  for (const area of land.woods) store.addArea(area, { natural: 'wood' })
  for (const { x, y, tags } of namedPlaces)
    store.addNode({ x, y }, tags.natural === 'peak' ? { ...tags, ele: land.field.at({ x, y }).toFixed(0) } : tags)
  for (const at of hydrantSpots) store.addNode({ x: at[0], y: at[1] }, { emergency: 'fire_hydrant', 'fire_hydrant:type': 'pillar', 'fire_hydrant:diameter': '4', water_source: 'main' })
  for (const { x, y, tags } of waterPoints) store.addNode({ x, y }, tags)
  return store
}

function addWater(store: OsmStore, land: Landscape): void {
  for (const { name, kind, outer } of land.water)
    store.addRing(outer, { natural: 'water', water: kind, ...(name ? { name } : {}) })
  const ids = new Map<string, number>()
  const idOf = (at: Spot): number => {
    const key = `${at.x},${at.y}`
    const known = ids.get(key)
    if (known !== undefined) return known
    const id = store.addNode(at)
    ids.set(key, id)
    return id
  }
  for (const { stream, line } of mappedStreams(land.streams))
    store.addWay(line.map(idOf), { waterway: stream.kind, ...(stream.name ? { name: stream.name } : {}), width: String(stream.width_m) })
  for (const { kind, name, line } of land.barriers) store.addWay(line.map((at) => store.addNode(at)), { waterway: kind, name })
}
