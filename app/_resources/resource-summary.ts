import { stationIdOf, type District, type Resource } from '@/lib/plan'
import { choiceLabel } from '../_fields/choice-label'
import { formatQuantity, say, type UnitSystem } from '../_text'
import '../_text/areas/resources'
import '../_text/areas/survey'

/** What a closed card says: where it stands, and its main figures. */
export type ResourceSummary = { readonly text: string; readonly figures: readonly string[]; readonly attention?: string }

export function resourceSummary(resource: Resource, district: District, system: UnitSystem): ResourceSummary {
  const stationId = stationIdOf(resource, district)
  const station = district.stations.find(({ id }) => id === stationId)?.name
  switch (resource.list) {
    case 'apparatus': {
      const { item } = resource
      const flow_gpm = item.kind === 'tender' ? undefined : item.rated_gpm
      const where = [station ?? say('resources.no-station'), ...(item.mutualAid ? [say('field.mutualAid')] : [])].join(' · ')
      const figures = [
        ...(flow_gpm === undefined ? [] : [formatQuantity(flow_gpm, 'gpm', system)]),
        ...(item.tank_gal === undefined ? [] : [formatQuantity(item.tank_gal, 'gal', system)]),
        ...(item.full_lb === undefined ? [] : [formatQuantity(item.full_lb, 'lb', system)]),
      ]
      const lacksMain = item.kind === 'tender' ? item.tank_gal === undefined : item.rated_gpm === undefined
      return { text: where, figures, ...(lacksMain && { attention: say(item.kind === 'tender' ? 'resources.no-tank' : 'resources.no-rating') }) }
    }
    case 'equipment': {
      const { item } = resource
      const carrier = district.apparatus.find(({ id }) => id === item.carriedBy)?.name
      const count = (item.count ?? 1) > 1 ? [say('resources.times', { count: item.count ?? 1 })] : []
      return { text: carrier === undefined ? say('resources.not-carried') : say('resources.on', { name: carrier }), figures: [...count, ...equipmentFigures(resource, system)] }
    }
    case 'stations': {
      const count = district.apparatus.filter((unit) => unit.stationId === resource.item.id).length
      return { text: say('survey.summary.apparatus', { count }), figures: resource.item.turnout_s === undefined ? [] : [say('resources.turnout', { time: formatQuantity(resource.item.turnout_s, 's', system) })] }
    }
  }
}

function equipmentFigures({ item }: Resource & { list: 'equipment' }, system: UnitSystem): string[] {
  switch (item.kind) {
    case 'hose': return [formatQuantity(item.size_in, 'in', system), formatQuantity(item.length_ft, 'ft', system)]
    case 'portableTank': return [formatQuantity(item.capacity_gal, 'gal', system)]
    case 'hardSuction': return [formatQuantity(item.size_in, 'in', system), formatQuantity(item.section_ft, 'ft', system)]
    case 'strainer': return [choiceLabel('style', item.style)]
    case 'jetSiphon': return [formatQuantity(item.size_in, 'in', system)]
  }
}

/** Words of a resource that a search looks through. */
export function resourceWords(resource: Resource, district: District, system: UnitSystem): string {
  const { text, figures } = resourceSummary(resource, district, system)
  const kind = resource.kind === 'station' ? say('survey.one.station') : choiceLabel('kind', resource.kind)
  return [resource.item.name, resource.item.notes, kind, text, ...figures].filter(Boolean).join(' ').replace(/\u00a0/g, ' ').toLowerCase()
}
