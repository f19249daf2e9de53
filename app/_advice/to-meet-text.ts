import type { TendersToMeet } from '@/lib/advise'
import type { District } from '@/lib/plan'
import { formatAsked, formatGiven, formatQuantity, linkText, say, type NameOf, type UnitSystem } from '../_text'

/** How many more tenders would meet a flow, or that none do and what limits it then. */
export function toMeetText({ likeId, asked_gpm, count, flow_gpm, triedCount, limit }: TendersToMeet, words: 'advice.to-meet' | 'advice.request.beyond', { apparatus }: Pick<District, 'apparatus'>, names: NameOf, system: UnitSystem): string {
  const like = apparatus.find(({ id }) => id === likeId)
  const values = {
    asked: formatAsked(asked_gpm, system), flow: formatGiven(flow_gpm, system, asked_gpm), tender: names(likeId) ?? likeId,
    tank: formatQuantity(like?.tank_gal, 'gal', system),
  }
  if (count !== null) return say(words, { ...values, count })
  return say(`${words}.none`, { ...values, tried: triedCount, limit: limit ? say('advice.to-meet.limit', { link: linkText(limit, names) }) : say('advice.to-meet.no-limit') })
}
