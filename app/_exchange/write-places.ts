import type { Place, WrittenFormat } from '@/lib/exchange'
import { endName, listName } from './exchange-words'

export const fileFormats = ['geojson', 'kml', 'gpx', 'csv'] as const
export type FileFormat = (typeof fileFormats)[number]

/** Media types: RFC 7946, OGC 07-147r2, RFC 4180; that of GPX is in use without a registration. */
const types: Readonly<Record<FileFormat, string>> = { geojson: 'application/geo+json', kml: 'application/vnd.google-earth.kml+xml', gpx: 'application/gpx+xml', csv: 'text/csv;charset=utf-8' }

/** Places as a file to keep. What writes it comes when it is wanted. */
export async function writePlaces(format: WrittenFormat, places: readonly Place[], title: string, attribution: string | undefined): Promise<{ name: string; text: string; type: string }> {
  const options = { title, listName, fieldName: endName, ...(attribution !== undefined && { attribution }) }
  const kind: FileFormat = format === 'csv-metric' ? 'csv' : format
  const file = (text: string) => ({ name: `${title}.${kind}`, text, type: types[kind] })
  switch (format) {
    case 'geojson': return file((await import('@/lib/exchange/write-geojson')).writeGeojson(places, options))
    case 'kml': return file((await import('@/lib/exchange/write-kml')).writeKml(places, options))
    case 'gpx': return file((await import('@/lib/exchange/write-gpx')).writeGpx(places, options))
    default: return file((await import('@/lib/exchange/write-csv')).writeCsv(places, { isMetric: format === 'csv-metric' }))
  }
}
