import { useState } from 'react'
import { siteKinds } from '@/app/_look/site-shapes'
import { say } from '@/app/_text'
import { SiteSymbol } from '../_look/site-symbol'
import { Button } from '../_ui/button'
import styles from './map.module.css'
import type { MapRoute, MapSite } from './map-types'

/** What the symbols and lines on this map stand for; only those that are on it. */
export function MapKey({ sites, routes }: { sites: readonly MapSite[]; routes: readonly MapRoute[] }) {
  const [isOpen, setOpen] = useState(false)
  const kinds = siteKinds.filter((kind) => sites.some((site) => site.kind === kind))
  const ghost = sites.find(({ isGhost }) => isGhost)
  const isStraight = routes.some((route) => route.isStraight)
  if (kinds.length === 0) return null
  return (
    <>
      {isOpen && (
        <ul className={styles.key} aria-label={say('map.key.label')}>
          {kinds.map((kind) => <li key={kind}><SiteSymbol kind={kind} size={20} /> {say(`map.kind.${kind}`)}</li>)}
          {ghost && <li><SiteSymbol kind={ghost.kind} size={20} isGhost /> {say('map.key.ghost')}</li>}
          {(['full', 'empty'] as const).filter((load) => routes.some((route) => route.load === load)).map((load) => <li key={load}><span className={styles.keyLine} data-line={load} /> {say(`map.key.${load}`)}</li>)}
          {isStraight && <li><span className={styles.keyLine} data-line="straight" /> {say('map.key.straight')}</li>}
        </ul>
      )}
      <Button label={say('map.key')} aria-expanded={isOpen} {...(isOpen && { icon: 'check' as const })} onClick={() => { setOpen(!isOpen) }} />
    </>
  )
}
