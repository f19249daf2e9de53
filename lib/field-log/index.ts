/** What was seen at the posts of a drill or a fire: reading, merging, clocks, files. */
export { effectiveEvents, type EffectiveEvents } from './effective-events'
export { byTime, mergeEvents } from './merge-events'
