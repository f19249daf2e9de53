'use client'

import { useEffect, useMemo, useState } from 'react'
import { findBounds } from '@/lib/geo'
import { pointsOnMap } from '../_exercise/points-on-map'
import { DistrictMap, drawnDistrictFromBlob, type DrawnDistrict, type MapSite } from '../_map'
import type { NameOf } from '../_text'
import type { SeatAnswer, SeatInfo } from './seat-messages'

type Props = { map: NonNullable<SeatInfo['map']>; points: SeatAnswer['points']; names: NameOf }

/** Where everybody is, for a seat that is told. */
export function SeatMap({ map, points = [], names }: Props) {
  const drawn = useSeatDistrict(map.hash)
  const all = useMemo<MapSite[]>(() => [...map.sites, ...pointsOnMap(points, names)], [map.sites, points, names])
  const home = useMemo(() => findBounds(map.sites.filter(({ kind }) => kind !== 'station').map(({ point }) => point)), [map.sites])
  return <DistrictMap {...(drawn && { district: drawn })} isLoading={false} sites={all} routes={[]} {...(home && { home })} {...(map.attribution !== undefined && { attribution: [map.attribution] })} />
}

/** The drawn map; the exercise goes on without it where it does not come. */
function useSeatDistrict(hash: string | undefined): DrawnDistrict | undefined {
  const [found, setFound] = useState<{ hash: string; district: DrawnDistrict }>()
  useEffect(() => {
    if (hash === undefined) return
    let isGone = false
    fetch('/api/seat/map').then(async (response) => (response.ok ? drawnDistrictFromBlob(hash, new Uint8Array(await response.arrayBuffer())) : undefined)).then((district) => {
      if (!isGone && district && !('code' in district)) setFound({ hash, district })
    }, () => undefined)
    return () => { isGone = true }
  }, [hash])
  return found?.hash === hash ? found?.district : undefined
}
