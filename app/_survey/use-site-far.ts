'use client'

import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import type { District, DraftSite } from '@/lib/plan'
import { farFromWater } from '@/lib/supply'
import { inOneOffWorker } from '../_worker/one-off-worker'
import type { WaterAwayService } from './water-away.worker'

/**
 * The warning that a draft site stands far from the water of its source, as the district's map has that water drawn.
 *
 * @returns undefined where it does not, where the map has no water there, and until it is measured
 */
export function useSiteFar(district: Pick<District, 'map' | 'sources'> | undefined, site: DraftSite | undefined): Issue | undefined {
  const source = district?.sources.find(({ id }) => id === site?.sourceId)
  const mapHash = district?.map?.hash
  const ask = mapHash !== undefined && site && source && source.kind !== 'pressureHydrant' ? JSON.stringify([mapHash, source.point, site.point]) : undefined
  const [found, setFound] = useState<{ readonly ask: string; readonly away_ft: number | undefined }>()
  useEffect(() => {
    if (ask === undefined) return
    const control = new AbortController()
    const [hash, from, to] = JSON.parse(ask) as [string, Point, Point]
    inOneOffWorker<WaterAwayService, number | undefined>(() => new Worker(new URL('./water-away.worker.ts', import.meta.url)), issue('osm-aborted', 'block'), control.signal, (service) => service.away_ft(hash, from, to))
      .then((away_ft) => { if (!control.signal.aborted && typeof away_ft !== 'object') setFound({ ask, away_ft }) }, () => undefined)
    return () => { control.abort() }
  }, [ask])
  return site && source && found?.ask === ask && found?.away_ft !== undefined ? farFromWater(site, source, found.away_ft) : undefined
}
