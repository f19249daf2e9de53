import { useEffect, useState } from 'react'
import { formatQuantity, type UnitSystem } from '@/app/_text'
import { getGround } from '@/app/_worker/ground/get-ground'
import type { TerrainSet } from '@/lib/plan'
import { feetFromMetres } from '@/lib/units'
import { drawnGround, type DrawnGround } from './drawn-ground'

const kept = new Map<string, DrawnGround>()

/** The ground of a district's elevation, drawn once in a worker; undefined until it is, where there is none, and where it cannot be had. */
export function useDrawnGround(terrain: TerrainSet | undefined, system: UnitSystem): DrawnGround | undefined {
  const hash = terrain?.hash
  const key = `${hash} ${system}`
  const [found, setFound] = useState<{ key: string; ground: DrawnGround }>()
  useEffect(() => {
    if (hash === undefined || kept.has(key)) return
    let isGone = false
    void draw(hash, system).then((ground) => {
      if (!ground) return
      kept.clear()
      kept.set(key, ground)
      if (!isGone) setFound({ key, ground })
    }, () => undefined)
    return () => { isGone = true }
  }, [hash, key, system])
  return hash === undefined ? undefined : (kept.get(key) ?? (found?.key === key ? found.ground : undefined))
}

async function draw(hash: string, system: UnitSystem): Promise<DrawnGround | undefined> {
  const unit = system === 'metric' ? 'm' : 'ft'
  const drawing = await getGround().draw({ hash }, unit)
  if ('code' in drawing) return undefined
  return drawnGround(drawing, (value) => formatQuantity(unit === 'm' ? feetFromMetres(value) : value, 'ft', system, { digits: 0 }))
}
