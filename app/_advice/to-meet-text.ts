import type { TendersToMeet } from '@/lib/advise'
import type { District } from '@/lib/plan'
import type { Link } from '@/lib/supply'
import { formatAsked, formatGiven, formatQuantity, linkText, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/advice'

type LimitOf = Pick<Link, 'kind' | 'subjectId'> | null

/**
 * How many more tenders would meet a flow, or that none do and what limits it then.
 *
 * @param now what limits the plan as it stands, as its headline has it; absent: not known yet
 */
export function toMeetText({ likeId, asked_gpm, count, flow_gpm, triedCount, limit }: TendersToMeet, words: 'advice.to-meet' | 'advice.request.beyond', { apparatus }: Pick<District, 'apparatus'>, names: NameOf, system: UnitSystem, now?: LimitOf): string {
  const like = apparatus.find(({ id }) => id === likeId)
  const values = {
    asked: formatAsked(asked_gpm, system), flow: formatGiven(flow_gpm, system, asked_gpm), tender: names(likeId) ?? likeId,
    tank: formatQuantity(like?.tank_gal, 'gal', system),
  }
  if (count !== null) return say(words, { ...values, count })
  return say(`${words}.none`, { ...values, tried: triedCount, limit: limitWords(limit, now, names) })
}

function limitWords(limit: LimitOf, now: LimitOf | undefined, names: NameOf): string {
  if (!limit) return say('advice.to-meet.no-limit')
  const link = linkText(limit, names)
  if (now === undefined) return say('advice.to-meet.limit-then', { link })
  const before = now ? linkText(now, names) : say('advice.to-meet.nothing')
  return say('advice.to-meet.limit', { link, now: before, same: before === link ? 'yes' : 'no' })
}
