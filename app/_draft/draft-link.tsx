import { say } from '../_text'
import { ButtonLink } from '../_ui/button-link'
import { draftHref, type DraftLinkTarget } from './draft-href'

/** The way to the sheet of a draft site: what a pumper draws there, how long the source lasts, how to prime. */
export function DraftLink({ size, ...target }: DraftLinkTarget & { size?: 's' | 'm' }) {
  return <ButtonLink href={draftHref(target)} label={say('draft.link')} iconAfter="arrowRight" {...(size && { size })} />
}
