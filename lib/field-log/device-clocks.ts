import type { SiteEvent } from '../plan'
import { findClockOffset, type ClockOffset } from './clock-offset'
import { mergeEvents } from './merge-events'
import type { LogWorld } from './log-world'
import { tripsSeen } from './trips-seen'

/** One device's clock, as laid on the clock that all times are given by. */
export type DeviceClock = {
  device: string
  /** Added to this device's times [s]; 0 where it agrees within the doubt. */
  shift_s: number
  /** [s] */
  doubt_s: number
  /** `reference`: the others are laid on it; `agrees`: no shift beyond the doubt; `unlinked`: nothing ties it to the others, so its times stand as they are. */
  basis: 'reference' | 'agrees' | 'unlinked' | ClockOffset['basis']
  matchCount: number
  /** Shifts that nearly as many matches would have agreed on [s]. */
  rivals_s: number[]
  eventCount: number
}

/** Clocks that are closer than this are the same: nobody presses a button to the second. Common practice, no source. */
const SAME_CLOCK_S = 5

type Link = { from: string; to: string; offset: ClockOffset }

/**
 * Lays the clocks of all devices on one. Pairs of devices are compared, each device is tied to the others along the links of
 * least doubt, and zero is where most clocks agree: the device whose offset is the median of them all, paper counting less.
 *
 * @param events that count, see `effectiveEvents`
 */
export function deviceClocks(events: readonly SiteEvent[], world: Pick<LogWorld, 'findTrip'>): DeviceClock[] {
  const byDevice = new Map<string, SiteEvent[]>()
  for (const event of mergeEvents(events)) {
    const own = byDevice.get(event.device)
    if (own) own.push(event)
    else byDevice.set(event.device, [event])
  }
  const devices = [...byDevice.keys()].sort((a, b) => (byDevice.get(b)?.length ?? 0) - (byDevice.get(a)?.length ?? 0) || (a < b ? -1 : 1))
  const known = tripsSeen(events, world)
  const links: Link[] = []
  devices.forEach((from, i) => {
    for (const to of devices.slice(i + 1)) {
      const offset = findClockOffset(byDevice.get(from) ?? [], byDevice.get(to) ?? [], known)
      if (offset) links.push({ from, to, offset }, { from: to, to: from, offset: { ...offset, offset_s: -offset.offset_s, rivals_s: offset.rivals_s.map((one) => -one) } })
    }
  })
  return groupsOf(devices, links).flatMap((group) => clocksOf(group, links, byDevice)).sort((a, b) => devices.indexOf(a.device) - devices.indexOf(b.device))
}

function clocksOf(group: readonly string[], links: readonly Link[], byDevice: ReadonlyMap<string, readonly SiteEvent[]>): DeviceClock[] {
  const [root] = group
  const count = (device: string) => byDevice.get(device)?.length ?? 0
  if (root === undefined) return []
  if (group.length === 1) return [{ device: root, shift_s: 0, doubt_s: 0, basis: byDevice.size === 1 ? 'reference' : 'unlinked', matchCount: 0, rivals_s: [], eventCount: count(root) }]
  const trustOf = (device: string) => ((byDevice.get(device) ?? []).some(({ entered }) => entered === 'button') ? 1 : 0.25)
  const first = alongLeastDoubt(root, group, links)
  const reference = medianDevice(group.map((device) => ({ device, offset_s: first.get(device)?.offset_s ?? 0, trust: trustOf(device), count: count(device) })))
  const paths = alongLeastDoubt(reference, group, links)
  return group.map((device): DeviceClock => {
    if (device === reference) return { device, shift_s: 0, doubt_s: 0, basis: 'reference', matchCount: 0, rivals_s: [], eventCount: count(device) }
    const { offset_s = 0, doubt_s = 0, basis = 'one-way' as const, matchCount = 0, rivals_s = [] } = paths.get(device) ?? {}
    const agrees = Math.abs(offset_s) <= Math.max(doubt_s, SAME_CLOCK_S)
    return { device, shift_s: agrees ? 0 : -offset_s, doubt_s, basis: agrees ? 'agrees' : basis, matchCount, rivals_s: rivals_s.map((one) => -one), eventCount: count(device) }
  })
}

type Path = ClockOffset

/** Offsets of every device of a group against one, each by the links whose doubts, as independent errors, add up to least. */
function alongLeastDoubt(from: string, group: readonly string[], links: readonly Link[]): Map<string, Path> {
  const done = new Map<string, Path>()
  const open = new Map<string, Path>([[from, { offset_s: 0, doubt_s: 0, basis: 'same-event', matchCount: Infinity, rivals_s: [] }]])
  while (open.size > 0 && done.size < group.length) {
    const [device, path] = [...open].reduce((a, b) => (b[1].doubt_s < a[1].doubt_s ? b : a))
    open.delete(device)
    done.set(device, path)
    for (const { from: at, to, offset } of links) {
      if (at !== device || done.has(to)) continue
      const doubt_s = Math.hypot(path.doubt_s, offset.doubt_s)
      if (doubt_s >= (open.get(to)?.doubt_s ?? Infinity)) continue
      open.set(to, {
        offset_s: path.offset_s + offset.offset_s, doubt_s, basis: device === from ? offset.basis : weaker(path.basis, offset.basis),
        matchCount: Math.min(path.matchCount, offset.matchCount), rivals_s: offset.rivals_s.map((one) => path.offset_s + one),
      })
    }
  }
  return done
}

const STRENGTH = ['same-event', 'both-ways', 'one-way'] as const
const weaker = (a: ClockOffset['basis'], b: ClockOffset['basis']): ClockOffset['basis'] => (STRENGTH.indexOf(a) > STRENGTH.indexOf(b) ? a : b)

/** The device at the weighted median of the offsets; where two share the middle, the one with more events. */
function medianDevice(clocks: readonly { device: string; offset_s: number; trust: number; count: number }[]): string {
  const sorted = clocks.toSorted((a, b) => a.offset_s - b.offset_s)
  const half = sorted.reduce((sum, { trust }) => sum + trust, 0) / 2
  let sum = 0
  const middle = sorted.filter(({ trust }) => {
    const before = sum
    sum += trust
    return before <= half && sum >= half
  })
  return middle.toSorted((a, b) => b.trust - a.trust || b.count - a.count || (a.device < b.device ? -1 : 1))[0]?.device ?? ''
}

function groupsOf(devices: readonly string[], links: readonly Link[]): string[][] {
  const left = new Set(devices)
  const groups: string[][] = []
  for (const device of devices) {
    if (!left.has(device)) continue
    const group = [device]
    left.delete(device)
    for (let at = 0; at < group.length; at++)
      for (const { from, to } of links) if (from === group[at] && left.delete(to)) group.push(to)
    groups.push(group)
  }
  return groups
}
