/** What was seen at the posts of a drill or a fire: reading, merging, clocks, files. */
export { findClockOffset, type ClockOffset } from './clock-offset'
export { deviceClocks, type DeviceClock } from './device-clocks'
export { effectiveEvents, type EffectiveEvents } from './effective-events'
export { logWorld, type ExpectedTrip, type LogWorld } from './log-world'
export { byTime, mergeEvents } from './merge-events'
export { onOneClock, type TimedEvent } from './on-one-clock'
export { withoutDoubles } from './without-doubles'
