import { isBundle, readBundle, type Bundle } from '@/lib/plan'
import type { Point } from '@/lib/geo'
import { OSM_ATTRIBUTION } from '@/lib/osm/attribution'

/** Places that tenders can reach, and so can everything within 200 ft of the fill site. */
export const portoFill: Point = { lat: 41.161, lon: -8.618 }
const portoDump: Point = { lat: 41.17, lon: -8.6 }

/**
 * A shuttle of eight tenders in the streets of a city, for measurements only.
 *
 * @param hash of the roads of porto-roads
 */
export function portoBundle(hash: string, fill: Point = portoFill, dump: Point = portoDump): Bundle {
  const read = readBundle({
    format: 'millrace-plan', version: 1, legs: [],
    district: {
      id: 'd', name: 'Bench', roads: { hash, name: 'porto', attribution: OSM_ATTRIBUTION, importedOn: '2026-11-25' },
      stations: [{ id: 's', name: 'Station', point: { lat: 41.165, lon: -8.61 } }],
      sources: [], draftSites: [], hazards: [], roadNotes: [],
      apparatus: [
        { id: 'p1', name: 'Pumper', kind: 'pumper', stationId: 's', rated_gpm: 1250, full_lb: 40000 },
        ...Array.from({ length: 8 }, (_, i) => ({ id: `t${i}`, name: `Tender ${i}`, kind: 'tender', stationId: 's', tank_gal: 1500 + 250 * i, full_lb: 30000 + 3000 * i, empty_lb: 18000 + 1500 * i })),
      ],
      equipment: [],
    },
    plan: {
      id: 'p', name: 'Bench', districtId: 'd', demand: [{ id: 'x', from_s: 0, flow_gpm: 500 }],
      fillSites: [{ id: 'f1', name: 'Fill', point: fill, pumperId: 'p1', lift_ft: 10 }],
      dumpSites: [{ id: 'u1', name: 'Dump', point: dump, tankCapacity_gal: 4000, positionCount: 2 }],
      tenders: Array.from({ length: 8 }, (_, i) => ({ id: `k${i}`, tenderId: `t${i}` })),
      legNotes: [],
    },
  })
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}
