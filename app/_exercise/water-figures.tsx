import type { SeatView } from '@/lib/exercise'
import { formatAsked, formatGiven, formatMinutes, formatQuantity, formatShortBy, formatUntil, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/exercise'
import { FigureTile } from '../_ui/figure-tile'
import { draftWords, whyShort } from './draft-words'
import shared from '../_look/shared.module.css'
import styles from './exercise.module.css'

/** Behind by no more than this is not behind. */
const SAME_GPM = 0.5

/** The water at this moment, as a seat knows it: what the fire gets, what stands in the tanks and how long that lasts. */
export function WaterFigures({ seat, names, system }: { seat: SeatView; names: NameOf; system: UnitSystem }) {
  const { fire, engine_gal = 0, isEngineHeld } = seat
  const gallons = (volume_gal: number) => formatQuantity(volume_gal, 'gal', system, { style: 'headline', toward: 'down' })
  const missing_gpm = fire?.isCounting ? fire.asked_gpm - fire.flow_gpm : 0
  return (
    <div className={styles.figures}>
      <p className={shared.heard} role="status">{missing_gpm > SAME_GPM && say('exercise.flow.is-short')}</p>
      {fire && (
        <FigureTile
          label={say('exercise.flow')} value={formatGiven(fire.flow_gpm, system)} look={missing_gpm > SAME_GPM ? 'danger' : 'water'}
          note={missing_gpm > SAME_GPM ? [say('exercise.flow.short', { flow: formatShortBy(fire.flow_gpm, fire.asked_gpm, system) ?? '' }), ...whyShort(seat.tanks, names)].join(' · ') : say('exercise.flow.asked', { flow: formatAsked(fire.asked_gpm, system) })}
        />
      )}
      {engine_gal > 0 && <FigureTile label={say('exercise.engine')} value={gallons(engine_gal)} note={say(isEngineHeld ? 'exercise.engine.held' : 'exercise.engine.note')} />}
      {seat.tanks.map(({ dumpSiteId, level_gal, capacity_gal, in_gpm, out_gpm, lasts_s, draft, waitingCount }) => (
        <FigureTile
          key={dumpSiteId} label={say('exercise.tank', { site: names(dumpSiteId) ?? dumpSiteId })} value={gallons(level_gal)} look={(lasts_s !== undefined && lasts_s < 120) || draft?.lostAt_s !== undefined ? 'danger' : 'plain'}
          note={[say('exercise.tank.of', { most: gallons(capacity_gal) }), level_gal < 1 ? say('exercise.tank.empty') : lasts_s !== undefined ? say('exercise.tank.lasts', { time: formatUntil(lasts_s) }) : say(in_gpm > out_gpm ? 'exercise.tank.rises' : 'exercise.tank.holds'), ...(out_gpm > 0 && draft && draft.state !== 'draws' ? [say('exercise.tank.leaks', { flow: formatQuantity(out_gpm, 'gpm', system) })] : []), ...draftWords(draft, gallons), say('exercise.waiting', { count: waitingCount })].join(' · ')}
        />
      ))}
      {seat.fills.map(({ fillSiteId, draw_gpm, source_gal, running_gpm, waitingCount }) => (
        <FigureTile
          key={fillSiteId} label={say('exercise.source.drawn', { site: names(fillSiteId) ?? fillSiteId })} value={formatGiven(draw_gpm, system)}
          note={[...(source_gal === undefined ? [] : [say('exercise.source.left', { water: gallons(source_gal) })]), ...(running_gpm === undefined ? [] : [say('exercise.source.running', { flow: formatGiven(running_gpm, system) })]), say('exercise.waiting', { count: waitingCount })].join(' · ')}
        />
      ))}
      {fire && fire.shortfall.short_s > 0 && <FigureTile label={say('exercise.missed')} value={formatQuantity(fire.shortfall.missing_gal, 'gal', system, { style: 'headline', toward: 'up' })} look="amber" note={say('exercise.missed.time', { time: formatMinutes(fire.shortfall.short_s) })} />}
    </div>
  )
}
