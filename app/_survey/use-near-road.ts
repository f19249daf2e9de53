'use client'

import { wrap, type Remote } from 'comlink'
import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import type { RoadNote } from '@/lib/plan'
import type { RoadNoteLike } from '@/lib/roads'
import type { NearRoad } from './near-road'
import type { NearRoadService } from './near-road.worker'

let shared: Remote<NearRoadService> | undefined

function getService(): Remote<NearRoadService> {
  shared ??= wrap<NearRoadService>(new Worker(new URL('./near-road.worker.ts', import.meta.url)))
  return shared
}

/** The road nearest to a point, from the district's roads; undefined while it is looked for and where there is none. */
export function useNearRoad(roadsHash: string | undefined, { lat, lon }: Point): NearRoad | undefined {
  const key = `${roadsHash} ${lat} ${lon}`
  const [found, setFound] = useState<{ key: string; road: NearRoad | undefined }>()
  useEffect(() => {
    if (roadsHash === undefined) return
    let isGone = false
    void getService().find(roadsHash, { lat, lon }).then((road) => { if (!isGone) setFound({ key, road }) }, () => undefined)
    return () => { isGone = true }
  }, [key, roadsHash, lat, lon])
  return found?.key === key ? found.road : undefined
}

/** Driving times from a place to others, in their order; undefined until they are known. */
export function useDrives(roadsHash: string | undefined, notes: readonly RoadNote[], from: Point, to: readonly Point[]): readonly (number | undefined)[] | undefined {
  const ask = JSON.stringify({ notes: notes.map(whatItSays), from, to })
  const key = `${roadsHash} ${ask}`
  const [found, setFound] = useState<{ key: string; drives: readonly (number | undefined)[] }>()
  useEffect(() => {
    const asked = JSON.parse(ask) as { notes: RoadNoteLike[]; from: Point; to: Point[] }
    if (roadsHash === undefined || asked.to.length === 0) return
    let isGone = false
    void getService().drives(roadsHash, asked.notes, asked.from, asked.to).then((drives) => { if (!isGone) setFound({ key, drives }) }, () => undefined)
    return () => { isGone = true }
  }, [ask, key, roadsHash])
  return found?.key === key ? found.drives : undefined
}

const whatItSays = ({ id, point, closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph, oneWay }: RoadNote): RoadNoteLike =>
  ({ id, point, closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph, oneWay })
