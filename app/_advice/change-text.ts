import type { Candidate, Effort, StopOutcome } from '@/lib/advise'
import { formatMinutes, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/advice'

const text = (value: number | string | undefined): string => (typeof value === 'string' ? value : '')
const number = (value: number | string | undefined): number => (typeof value === 'number' ? value : 0)

/** A change as something to do: "Send Tender 71 (3,500 gal) from Station 7". */
export function changeText({ kind, subjectIds, values }: Pick<Candidate, 'kind' | 'subjectIds' | 'values'>, names: NameOf, system: UnitSystem): string {
  const name = (at: number): string => { const id = subjectIds[at]; return id === undefined ? '' : (names(id) ?? id) }
  const [subject, place] = [name(0), name(1)]
  const count = number(values['bayCount'] ?? values['positionCount'] ?? values['count'])
  const lines = number(values['lineCount'])
  const size = formatQuantity(number(values['size_in']), 'in', system)
  const rated = formatQuantity(number(values['rated_gpm']), 'gpm', system)
  const tank = formatQuantity(number(values['tank_gal']), 'gal', system)
  const capacity = formatQuantity(number(values['capacity_gal']), 'gal', system)
  // A tender without a station has its fill and dump site next.
  const station = subjectIds.length > 3 ? place : say('advice.station.unknown')
  switch (kind) {
    case 'otherDraftSite': return say('advice.change.otherDraftSite', { subject, place })
    case 'secondFillSite': return say('advice.change.secondFillSite', { subject, place, count })
    case 'fillPumper': return values['size_in'] === undefined ? say('advice.change.fillPumper', { subject, rated, place }) : say('advice.change.fillPumper.suction', { subject, rated, place, lines, size })
    case 'suctionLine': return say('advice.change.suctionLine', { subject, lines, size })
    case 'suctionSize': return say('advice.change.suctionSize', { subject, size })
    case 'fillLineSize': return say('advice.change.fillLineSize', { subject, size })
    case 'fillLineCount': return say('advice.change.fillLineCount', { subject, lines, size })
    case 'fillBay': return say('advice.change.fillBay', { subject, count, order: text(values['order']) })
    case 'bayOrder': return say('advice.change.bayOrder', { subject, order: text(values['order']) })
    case 'otherRoad': {
      const roads = text(values['roads'])
      return roads === '' ? say('advice.change.otherRoad.unnamed', { subject, place }) : say('advice.change.otherRoad', { subject, place, roads })
    }
    case 'tender': return say('advice.change.tender', { subject, tank, station })
    case 'tenderWithTank': return say('advice.change.tenderWithTank', { subject, tank, station, capacity })
    case 'portableTank': return say('advice.change.portableTank', { subject, place })
    case 'dumpPosition': return say('advice.change.dumpPosition', { subject, count })
    case 'driveThrough': return say('advice.change.driveThrough', { subject })
    case 'dumpPumper': return say('advice.change.dumpPumper', { subject, rated, place })
    case 'swapPumpers': return say('advice.change.swapPumpers', { subject, place, site: name(2) })
  }
}

/** Effort in plain terms: "2 people, 1 apparatus, 12 min". */
export const effortText = ({ peopleCount, apparatusCount, time_s }: Effort): string =>
  say('advice.effort', { people: peopleCount, apparatus: apparatusCount, time: formatMinutes(time_s, 'up') })

/** What stops, and where. */
export function stopText({ kind, subjectIds, values }: Pick<StopOutcome, 'kind' | 'subjectIds' | 'values'>, names: NameOf): string {
  const [subject, place] = [0, 1].map((at) => { const id = subjectIds[at]; return id === undefined ? '' : (names(id) ?? id) }) as [string, string]
  const roads = text(values['roads'])
  const cut = number(values['cut'])
  // Where the plan names no pumper, the site stands for it.
  const isUnnamed = subjectIds[0] === subjectIds[1]
  switch (kind) {
    case 'fillPumper': return isUnnamed ? say('advice.stop.fillPumper.unnamed', { place }) : say('advice.stop.fillPumper', { subject, place })
    case 'dumpPumper': return isUnnamed ? say('advice.stop.dumpPumper.unnamed', { place }) : say('advice.stop.dumpPumper', { subject, place })
    case 'layPumper': return say('advice.stop.layPumper', { subject, place })
    case 'tender': return say('advice.stop.tender', { subject })
    case 'fillBay': return say('advice.stop.fillBay', { subject })
    case 'dumpPosition': return say('advice.stop.dumpPosition', { subject })
    case 'road': {
      const what = roads === '' ? say('advice.stop.road', { subject, place }) : say('advice.stop.road.named', { subject, place, roads })
      return cut > 0 ? say('advice.stop.road.cut', { what, count: cut }) : what
    }
  }
}
