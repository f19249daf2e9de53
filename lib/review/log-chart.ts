import type { SupplyChart } from '../supply'
import type { Reading } from './log-events'
import type { Stay } from './marks'
import type { TenderLog } from './tender-logs'
import type { TenderHappened } from './tender-happened'

type Segment = SupplyChart['tenders'][number]['segments'][number]

/**
 * A log as the string chart draws a plan: every tender a line between its sites, with the levels that were read in the
 * portable tanks.
 *
 * @param like     the plan's chart, for its roads and tanks; absent: logged without a plan
 * @param happened of the tenders that were laid beside the plan, for their waiting
 */
export function logChart(logs: readonly TenderLog[], readings: readonly Reading[], like: SupplyChart | undefined, happened: readonly TenderHappened[], end_s: number): SupplyChart {
  return {
    end_s,
    tenders: logs.filter(({ stays }) => stays.length > 0).map(({ tender, stays }) => {
      const planned = like?.tenders.find(({ id }) => id === tender.id)
      return {
        id: tender.id, fillSiteId: planned?.fillSiteId ?? siteOf(stays, 'fill'), dumpSiteId: planned?.dumpSiteId ?? siteOf(stays, 'dump'), distance_mi: planned?.distance_mi ?? 0,
        segments: segmentsOf(stays, happened.find(({ id }) => id === tender.id), end_s),
      }
    }),
    tanks: (like?.tanks ?? []).flatMap((tank) => {
      const levels = readings.filter(({ kind, post }) => kind === 'tankLevel' && (post.siteId === tank.id || (post.siteId === undefined && like?.tanks.length === 1)))
        .map(({ at_s, value = 0 }) => ({ time_s: at_s, level_gal: Math.min(tank.capacity_gal, value) }))
      return levels.length > 1 && !tank.isFront ? [{ ...tank, levels }] : []
    }),
    flow: [],
  }
}

const siteOf = (stays: readonly Stay[], place: Stay['place']): string => stays.find((stay) => stay.place === place && stay.siteId !== undefined)?.siteId ?? place

function segmentsOf(stays: readonly Stay[], happened: TenderHappened | undefined, end_s: number): Segment[] {
  const segments: Segment[] = []
  const counts = { dump: 0, fill: 0 }
  const add = (phase: Segment['phase'], from_s: number | undefined, to_s: number | undefined, siteId: string): void => {
    if (from_s === undefined || from_s >= end_s) return
    const upTo_s = Math.min(end_s, to_s ?? end_s)
    if (upTo_s > from_s) segments.push({ phase, from_s, to_s: upTo_s, siteId })
  }
  stays.forEach((stay, k) => {
    const { arrived, dumping, empty, left, hookedUp, filling, full } = stay.times_s
    const siteId = stay.siteId ?? stay.place
    const taken_s = stay.place === 'dump' ? dumping : hookedUp
    const waits_s = (stay.place === 'dump' ? happened?.dumpWaits_s : happened?.fillWaits_s) ?? []
    const waited_s = arrived === undefined ? 0 : Math.min(waits_s[counts[stay.place]] ?? 0, (taken_s ?? end_s) - arrived)
    counts[stay.place] += taken_s === undefined ? 0 : 1
    const placed_s = arrived === undefined ? undefined : arrived + waited_s
    if (stay.place === 'dump') {
      add('waits-to-dump', arrived, placed_s, siteId)
      add('takes-position', placed_s, dumping, siteId)
      if (dumping !== undefined) add('dumps', dumping, empty, siteId)
      if (empty !== undefined) add('clears-position', empty, left, siteId)
    } else {
      add('waits-to-fill', arrived, placed_s, siteId)
      add('takes-bay', placed_s, hookedUp, siteId)
      if (hookedUp !== undefined) add('waits-in-bay', hookedUp, filling, siteId)
      if (filling !== undefined) add('fills', filling, full, siteId)
      if (full !== undefined) add('clears-bay', full, left, siteId)
    }
    const next = stays[k + 1]
    if (left !== undefined && next) add(next.place === 'fill' ? 'drives-to-fill' : 'drives-to-dump', left, next.times_s.arrived, next.siteId ?? next.place)
  })
  return segments
}
