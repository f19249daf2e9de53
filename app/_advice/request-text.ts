import type { RequestLine, RequestList } from '@/lib/advise'
import { formatAsked, formatGiven, formatMinutes, say, thereAndReady, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/advice'

/** What keeps a unit from setting up on arrival. */
const WAITS_FOR = { fillPumper: 'people', dumpPumper: 'tank', layPumper: 'lay', tender: 'people' } as const

/** A line's task in words. */
export const taskText = ({ task, siteId }: RequestLine, names: NameOf): string => say(`advice.request.task.${task}`, { site: names(siteId) ?? siteId })

/** Where a unit comes from. */
export function stationText({ stationId, isMutualAid }: Pick<RequestLine, 'stationId' | 'isMutualAid'>, names: NameOf): string {
  const station = stationId === undefined ? say('advice.station.unknown') : (names(stationId) ?? stationId)
  return isMutualAid && !/mutual aid/i.test(station) ? say('advice.request.mutual-aid', { station }) : station
}

/** The list as it is read out on the radio: by station, in the order in which the first of each is there. */
export function requestText(list: RequestList, hazard: string, names: NameOf, system: UnitSystem): string {
  const groups = new Map<string, RequestLine[]>()
  for (const line of list.lines) {
    const from = stationText(line, names)
    groups.set(from, [...(groups.get(from) ?? []), line])
  }
  const flow = formatAsked(list.ask.flow_gpm, system)
  const met = formatMinutes(list.met_s ?? 0, 'up')
  const head = list.outcome === 'met'
    ? say('advice.request.text.met', { hazard, flow, met })
    : list.outcome === 'late'
      ? say('advice.request.text.late', { hazard, flow, met, by: formatMinutes(list.ask.by_s) })
      : say('advice.request.text.short', { hazard, flow, held: formatGiven(list.flow_gpm, system) })
  return [
    head,
    ...[...groups].flatMap(([station, lines]) => [
      '', say('advice.request.text.from', { station }),
      ...lines.map((line) => say('advice.request.text.line', { unit: names(line.apparatusId) ?? line.apparatusId, task: taskText(line, names), times: thereAndReady(line, WAITS_FOR[line.task]) })),
    ]),
    '', say('advice.request.text.foot'),
  ].join('\n')
}
