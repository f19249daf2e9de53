import type { District, Place } from '@/lib/plan'
import { findHazardFlow_gpm } from '@/lib/supply'
import { choiceLabel } from '../_fields/choice-label'
import { formatAbout, formatGiven, formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/survey'
import { findFloatFlow_gpm, findHydrantFlow_gpm, findLensVolume_gal, findLiftByElevation_ft } from './known-water'

/** What the closed card of a place says, and what about it needs a look. */
export type PlaceSummary = { readonly text: string; readonly attention?: string | undefined }

export function placeSummary(place: Place, district: District, system: UnitSystem): PlaceSummary {
  const found = summaryOf(place, district, system)
  const isUnchecked = place.kind === 'source' && place.item.evidence?.point?.mark === 'assumed'
  return isUnchecked ? { ...found, attention: say('survey.to-check') } : found
}

/** The same for the places of one state of a district: what has been said of one is at hand from then on. */
export function placeSummaries(district: District, system: UnitSystem): (place: Place) => PlaceSummary {
  const said = new Map<Place, PlaceSummary>()
  return (place) => {
    const summary = said.get(place) ?? placeSummary(place, district, system)
    said.set(place, summary)
    return summary
  }
}

function summaryOf(place: Place, district: District, system: UnitSystem): PlaceSummary {
  switch (place.kind) {
    case 'source': {
      const { item } = place
      const kind = choiceLabel('kind', item.kind)
      const hydrant_gpm = item.kind === 'pressureHydrant' ? findHydrantFlow_gpm(item) : undefined
      const volume_gal = item.usable_gal ?? findLensVolume_gal(item)
      const inflow_gpm = item.inflow_gpm ?? (item.kind === 'stream' ? findFloatFlow_gpm(item) : undefined)
      if (hydrant_gpm !== undefined) return { text: `${kind} · ${say('survey.summary.hydrant', { flow: formatGiven(hydrant_gpm, system) })}` }
      const figures = [
        ...(volume_gal === undefined || item.kind === 'pressureHydrant' ? [] : [formatAbout(volume_gal, 'gal', system)]),
        ...(inflow_gpm === undefined ? [] : [say(item.kind === 'stream' ? 'survey.summary.stream' : 'survey.summary.inflow', { flow: item.inflow_gpm === undefined ? formatGiven(inflow_gpm, system) : formatQuantity(inflow_gpm, 'gpm', system) })]),
      ]
      return figures.length > 0 ? { text: [kind, ...figures].join(' · ') } : { text: kind, attention: say(item.kind === 'pressureHydrant' ? 'survey.summary.untested' : 'survey.summary.volume-unknown') }
    }
    case 'draftSite': {
      const { item } = place
      const source = district.sources.find(({ id }) => id === item.sourceId)
      const lift_ft = item.lift_ft ?? findLiftByElevation_ft(item, source)
      const on = source ? say('survey.summary.on', { source: source.name }) : say('survey.summary.on-none')
      if (lift_ft === undefined) return { text: on, attention: say('survey.summary.lift-unknown') }
      return { text: `${on} · ${say('survey.summary.lift', { lift: formatQuantity(lift_ft, 'ft', system) })}` }
    }
    case 'hazard': {
      const flow_gpm = findHazardFlow_gpm(place.item)
      return flow_gpm === undefined ? { text: '', attention: say('survey.summary.need-unknown') } : { text: say('survey.summary.needs', { flow: formatQuantity(flow_gpm, 'gpm', system, { style: 'headline', toward: 'up' }) }) }
    }
    case 'roadNote': {
      const { closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph, oneWay } = place.item
      const parts = [
        ...(closed === undefined ? [] : [say(closed ? 'survey.summary.closed' : 'survey.summary.open')]),
        ...(maxWeight_lb === undefined ? [] : [formatQuantity(maxWeight_lb, 'lb', system)]),
        ...(maxHeight_ft === undefined ? [] : [say('survey.summary.high', { height: formatQuantity(maxHeight_ft, 'ft', system) })]),
        ...(maxWidth_ft === undefined ? [] : [say('survey.summary.wide', { width: formatQuantity(maxWidth_ft, 'ft', system) })]),
        ...(speed_mph === undefined ? [] : [formatQuantity(speed_mph, 'mph', system)]),
        ...(oneWay === undefined ? [] : [choiceLabel('oneWay', oneWay)]),
      ]
      return parts.length > 0 ? { text: parts.join(' · ') } : { text: '', attention: say('survey.summary.note-empty') }
    }
    case 'station':
      return { text: say('survey.summary.apparatus', { count: district.apparatus.filter(({ stationId }) => stationId === place.item.id).length }) }
  }
}

/** Words of a place that a search looks through. */
export function searchWords(place: Place, district: District): string {
  const { item } = place
  const more = place.kind === 'source'
    ? [choiceLabel('kind', place.item.kind), place.item.access]
    : place.kind === 'draftSite' ? [district.sources.find(({ id }) => id === place.item.sourceId)?.name, place.item.turnRound] : []
  return [item.name, item.notes, say(`survey.one.${place.kind}`), ...more].filter(Boolean).join(' ').toLowerCase()
}
