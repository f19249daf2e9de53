import type { Now } from '@/lib/field-log'
import { formatGiven, formatMinutes, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/log'
import { FigureTile } from '../_ui/figure-tile'
import { clockTime } from './clock-time'
import styles from './log.module.css'

/** Under this, water in the tanks is short: the time it takes to notice and act. Common practice, no source. Danger where somebody has read the level, else a reason to read it. */
const SHORT_S = 180

/** What can be told at this moment, each figure named an estimate with how far it may be off. */
export function NowPanel({ now, names, system, zone, asOf_ms }: { now: Now; names: NameOf; system: UnitSystem; zone: string | undefined; asOf_ms?: number }) {
  const site = (id: string | undefined) => (id === undefined ? '' : (names(id) ?? id))
  const gallons = (value: number) => formatQuantity(value, 'gal', system, { style: 'headline' })
  const short = (at_ms: number) => clockTime(at_ms, zone, { hasSeconds: false })
  return (
    <section className={styles.part} aria-labelledby="log-now">
      <h2 id="log-now" className={styles.heading}>{asOf_ms === undefined ? say('log.now') : say('log.now.then', { time: short(asOf_ms) })}</h2>
      <p className={styles.quiet}>{say('log.now.lead')}</p>
      <div className={styles.figures}>
        {now.tanks.map(({ siteId, level, lasts, readAt_ms }) => (
          <div key={siteId} className={styles.pair}>
            {level
              ? <FigureTile label={say('log.now.tank', { site: site(siteId) })} value={gallons(level.value)} look="water" note={say('log.now.tank.note', { doubt: gallons(level.doubt), read: readAt_ms === undefined ? 'none' : short(readAt_ms) })} />
              : <FigureTile label={say('log.now.tank', { site: site(siteId) })} value={say('log.now.not-known')} note={say('log.now.tank.none')} />}
            <FigureTile
              label={say('log.now.lasts', { site: site(siteId) })} value={lasts ? formatMinutes(lasts.value, 'down') : say('log.now.not-known')} look={lasts && lasts.value < SHORT_S ? (readAt_ms === undefined ? 'amber' : 'danger') : 'plain'}
              note={lasts ? say('log.now.lasts.note', { low: formatMinutes(Math.max(0, lasts.value - lasts.doubt), 'down'), high: formatMinutes(lasts.value + lasts.doubt, 'up') }) : say('log.now.lasts.none')}
            />
          </div>
        ))}
        {now.flow.basis === 'none'
          ? <FigureTile label={say('log.now.flow')} value={say('log.now.not-known')} note={say('log.now.flow.none.note')} />
          : (
            <FigureTile
              label={say('log.now.flow')} look="water" value={formatGiven(now.flow.flow_gpm, system)}
              note={say(`log.now.flow.${now.flow.basis}`, { doubt: formatQuantity(now.flow.doubt_gpm, 'gpm', system, { style: 'headline' }), time: formatMinutes(now.flow.over_s, 'down') })}
            />
          )}
      </div>
      <h3 className={styles.small}>{say('log.now.road')}</h3>
      {now.road.length === 0
        ? <p>{say('log.now.road.none')}</p>
        : (
          <ul className={styles.rows}>
            {now.road.map(({ apparatusId, fromSiteId, toSiteId, left_ms, expected_ms, doubt_s, isOverdue }) => (
              <li key={apparatusId}>
                {expected_ms === undefined || doubt_s === undefined
                  ? say('log.now.road.open', { tender: site(apparatusId), site: site(fromSiteId), time: short(left_ms) })
                  : say('log.now.road.one', { tender: site(apparatusId), site: site(toSiteId), time: short(expected_ms), doubt: formatMinutes(doubt_s, 'up'), late: isOverdue ? 'yes' : 'no' })}
              </li>
            ))}
          </ul>
        )}
    </section>
  )
}
