import type { FeedSpec, ShuttleSpec } from './spec'

/** Whether a hose lay leads straight to the fire ground, past every site. */
export const isDirect = ({ dumpIndex, fillIndex }: FeedSpec): boolean => dumpIndex === undefined && fillIndex === undefined

/** Most that lays straight to the fire ground ever bring together. [gpm] */
export const directMost_gpm = ({ feeds = [] }: ShuttleSpec): number => feeds.reduce((sum, feed) => (isDirect(feed) ? sum + feed.flow_gpm : sum), 0)
