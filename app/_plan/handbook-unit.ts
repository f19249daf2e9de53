import { apparatusTemplates, type ApparatusTemplate, type District, type EditBody } from '@/lib/plan'
import { say } from '../_text'

/** What a first plan begins with where the district has none: the commonest sizes. */
export const FIRST_PUMPER = 'pumper1000'
export const FIRST_TENDER = 'tender2000'

/** The edit that adds apparatus with the handbook's figures, standing at the district's first station. */
export function unitEdit({ key: _key, ...template }: ApparatusTemplate, district: Pick<District, 'apparatus' | 'stations'>, id: string): EditBody & { kind: 'addItem' } {
  const number = district.apparatus.filter(({ kind }) => kind === template.kind).length + 1
  const name = say(template.kind === 'tender' ? 'plan.tender-name' : 'plan.pumper-name', { number })
  return { kind: 'addItem', collection: 'apparatus', item: { ...template, id, name, ...(district.stations[0] && { stationId: district.stations[0].id }) } }
}

/** @throws RangeError for a key that no template has */
export function getTemplate(key: string): ApparatusTemplate {
  const found = apparatusTemplates.find((template) => template.key === key)
  if (!found) throw new RangeError(`key is ${key}, must name a template of apparatus`)
  return found
}
