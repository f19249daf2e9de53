import { movedLately, type Session } from '@/lib/exercise'
import { SupplyStrip } from '../_charts/supply-strip'
import { formatMinutes, say, type NameOf } from '../_text'
import '../_text/areas/exercise'

/** The supply strip of what has moved in the last minutes: where it is narrow now, the water is held up. */
export function LiveStrip({ session, asked_gpm, names }: { session: Session; asked_gpm: number; names: NameOf }) {
  const moved = movedLately(session)
  if (!moved) return null
  const chain = [
    { part: 'fill' as const, capacity_gpm: moved.drawn_gpm, subjectIds: [] },
    { part: 'dump' as const, capacity_gpm: moved.dumped_gpm, subjectIds: [] },
    { part: 'fireGround' as const, capacity_gpm: moved.delivered_gpm, subjectIds: [] },
  ]
  return (
    <section aria-label={say('exercise.strip')}>
      <h2>{say('exercise.strip')}</h2>
      <p>{say('exercise.strip.text', { time: formatMinutes(moved.over_s, 'down') })}</p>
      <SupplyStrip result={{ chain, limitingLink: null, sustainable_gpm: null, needed_gpm: asked_gpm }} names={names} isMoved full_gpm={Math.max(100, asked_gpm * 1.5, ...chain.map(({ capacity_gpm }) => capacity_gpm))} />
    </section>
  )
}
