import type { Issue } from '../issue'
import { exchangeFault } from './exchange-fault'
import { exchangeLimits } from './exchange-limits'
import type { FoundFeature, Scalar, Shape } from './place'

export type ExchangeFormat = 'csv' | 'geojson' | 'kml' | 'gpx'

/** What a file holds, before any of it is understood. */
export type FoundFile = {
  readonly format: ExchangeFormat
  readonly features: readonly FoundFeature[]
  /** Names of all columns, in the order in which they first come. */
  readonly columns: readonly string[]
  /** Decimal sign its numbers most likely have. */
  readonly decimal: '.' | ','
  /** What about the file as a whole wants a look. */
  readonly notes: readonly Issue[]
}

/** Share done, 0 to 1. May return a promise, which is awaited: the place to let messages through. */
export type Report = (doneShare: number) => void | Promise<void>

/** Gathers features and holds them to the limits. */
export class FeatureList {
  readonly features: FoundFeature[] = []
  readonly #columns = new Set<string>()
  #pointCount = 0

  add(at: number, values: Readonly<Record<string, Scalar>>, shape?: Shape): void {
    if (this.features.length >= exchangeLimits.maxFeatures) throw exchangeFault('exchange-too-many', { limit: exchangeLimits.maxFeatures })
    this.#pointCount += shape?.kind === 'line' ? shape.points.length : shape?.kind === 'area' ? shape.rings.reduce((sum, ring) => sum + ring.length, 0) : 1
    if (this.#pointCount > exchangeLimits.maxPoints) throw exchangeFault('exchange-too-many-points', { limit: exchangeLimits.maxPoints })
    for (const column of Object.keys(values)) this.#columns.add(column)
    if (this.#columns.size > exchangeLimits.maxColumns) throw exchangeFault('exchange-too-many-columns', { limit: exchangeLimits.maxColumns })
    this.features.push({ at, values, ...(shape && { shape }) })
  }

  file(format: ExchangeFormat, notes: readonly Issue[] = [], decimal: '.' | ',' = '.'): FoundFile {
    if (this.features.length === 0) throw exchangeFault('exchange-empty')
    return { format, features: this.features, columns: [...this.#columns], decimal, notes }
  }
}
