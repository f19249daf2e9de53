'use client'

import { useMemo } from 'react'
import { distanceM, findBounds, pointAlong, type Point } from '@/lib/geo'
import type { Lay } from '@/lib/plan'
import type { HoseLayAnswer } from '@/lib/supply'
import { DistrictMap, useDrawnDistrict, type MapRoute, type MapSite } from '../_map'
import { usePlanBoard } from '../_plan/plan-context'
import { formatQuantity, say } from '../_text'
import '../_text/areas/hose'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

/** Places nearer than this to a point of the lay are not drawn twice. */
const SAME_PLACE_M = 40

/** More points than these would hide the way they lie on: the map then shows some, evenly spread, and both ends. */
const MOST_SHOWN = 12

const indexOf = (siteId: string): number | undefined => (siteId.startsWith('point-') ? Number(siteId.slice('point-'.length)) : undefined)

/** The lay on the map: its points can be dragged, moved by keys and added; pumpers stand where they were worked out. */
export function LayMap({ lay, answer, isPlacing, onMove, onPlace }: { lay: Lay; answer: HoseLayAnswer | undefined; isPlacing: boolean; onMove: (index: number, point: Point) => void; onPlace: (point: Point) => void }) {
  const { district, plan, names } = usePlanBoard()
  const [system] = useUnitSystem()
  const drawn = useDrawnDistrict(district.map)
  const home = useMemo(() => findBounds(lay.points), [lay.points])
  const sites = useMemo<MapSite[]>(() => {
    const psi = (value: number) => formatQuantity(value, 'psi', system)
    const pumpers = (answer?.pumpers ?? []).flatMap(({ id, at_ft, discharge_psi, isSource }, i): MapSite[] => {
      const point = isSource ? lay.points[0] : pointAlong(lay.points, at_ft / (answer?.hose_ft ?? 1))
      return point && !isSource ? [{ id: `pumper-${id}`, kind: 'pumper', point, name: names(id) ?? id, letter: String(i + 1), note: psi(discharge_psi) }] : []
    })
    const source = answer?.pumpers[0]
    const every = Math.ceil((lay.points.length - 1) / MOST_SHOWN)
    const points = lay.points.map((point, i): MapSite => ({
      id: `point-${i}`, kind: 'hosePoint', point, letter: String(i + 1), isMovable: true,
      name: i === 0 ? (names(lay.fromId) ?? say('hose.map.first')) : i === lay.points.length - 1 ? (names(lay.toId) ?? say('hose.map.last')) : say('hose.point', { number: i + 1 }),
      ...(i === 0 && source && { note: `${names(source.id) ?? ''} ${psi(source.discharge_psi)}` }),
    })).filter((_, i) => i % every === 0 || i === lay.points.length - 1)
    const others = [
      ...plan.fillSites.map(({ id, name, point }) => ({ id: id as string, kind: 'fillSite' as const, name, point })),
      ...plan.dumpSites.map(({ id, name, point }) => ({ id: id as string, kind: 'dumpSite' as const, name, point })),
    ].filter(({ point }) => lay.points.every((own) => distanceM(own, point) > SAME_PLACE_M))
    return [...others.map((one) => ({ ...one, isGhost: true })), ...points, ...pumpers]
  }, [lay, answer, plan, names, system])
  const routes = useMemo<MapRoute[]>(() => [{ id: lay.id, path: lay.points, load: 'full', by: 'handbook', isStraight: false }], [lay.id, lay.points])
  return (
    <section className={styles.mapPart} aria-label={say('hose.map')}>
      <DistrictMap
        sites={sites} routes={routes} {...(home && { home })} {...(drawn.district && { district: drawn.district })} isLoading={drawn.isLoading}
        {...(district.map && { attribution: [district.map.attribution] })} {...(isPlacing && { pending: 'hosePoint' as const })}
        onPlace={onPlace}
        onMove={(id, point) => { const index = indexOf(id); if (index !== undefined) onMove(index, point) }}
        className={styles.map}
      />
    </section>
  )
}
