import { Fragment, memo } from 'react'
import { SiteSymbol } from '../_look/site-symbol'
import { joinClasses } from '../_ui/join-classes'
import styles from './map.module.css'
import type { MapSite } from './map-types'
import { nameLines } from './name-lines'
import { isSameSite } from './same-site'

/** What is seen of a site on the map: its symbol, its name, and what is to be said of it. */
export const SiteFace = memo(function SiteFace({ site: { kind, name, letter, note, isMarked, isChosen, isGhost } }: { site: MapSite }) {
  return (
    <div className={joinClasses(styles.face, isChosen && styles.chosen, isMarked && styles.marked)}>
      <span className={styles.symbol}>
        <SiteSymbol kind={kind} size={30} {...(letter !== undefined && { letter })} {...(isGhost && { isGhost })} />
      </span>
      <span className={styles.name} data-name aria-hidden="true">
        {nameLines(name).map((line, k) => <Fragment key={k}>{k > 0 && <br />}{line}{' '}</Fragment>)}
        {note && <span className={styles.note}>{note}</span>}
      </span>
    </div>
  )
}, (before, now) => isSameSite(before.site, now.site))
