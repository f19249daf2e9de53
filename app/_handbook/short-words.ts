import { isTextKey, listWords, type NameOf, say } from '../_text'
import '../_text/areas/handbook'

/** Why a flow is not there, as the end of a sentence. */
export function shortWords(why: string | undefined, subjectIds: readonly string[], names: NameOf): string {
  const key = `handbook.short.${why ?? 'not-brought'}`
  const subject = namesOfAll(subjectIds, names)
  return isTextKey(key) ? say(key, { subject }) : say('handbook.short.not-brought', { subject })
}

/** Names of items, as a list. */
export const namesOfAll = (ids: readonly string[], names: NameOf): string => listWords([...new Set(ids)].map((id) => names(id) ?? say('issue.unnamed')))
