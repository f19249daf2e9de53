import { findDraftSite, findSource, type Bundle, type Source } from '../../plan'

/** The source that a hose lay from a place draws on: that of the draft site there, or the source itself. Undefined: nobody knows it. */
export const sourceOfLay = (docs: Pick<Bundle, 'district'>, fromId: string): Source | undefined => findSource(docs, findDraftSite(docs, fromId)?.sourceId ?? fromId)
