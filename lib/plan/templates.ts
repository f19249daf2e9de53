import type { Evidence } from '../evidence'
import type { Apparatus } from './documents/apparatus'
import type { Equipment } from './documents/equipment'

/**
 * Apparatus and equipment to start from: the commonest kinds, with the handbook's figures
 * marked as such, so that a first answer needs no measuring. What a template leaves out is
 * unknown and stays absent.
 */
type WithoutIdentity<T> = T extends unknown ? Omit<T, 'id' | 'name'> : never
export type ApparatusTemplate = WithoutIdentity<Apparatus> & { key: string }
export type EquipmentTemplate = WithoutIdentity<Equipment> & { key: string }

const rating: Evidence = { mark: 'handbook', source: 'rated capacity at draft: 150 psi net, 10 ft lift, 20 ft of hard suction (NWCG glossary)' }
const nominal: Evidence = { mark: 'handbook', source: 'nominal size of its class' }
const weight: Evidence = { mark: 'assumed', source: 'common practice, no source', spreadShare: 0.15 }

function pumper(key: string, rated_gpm: number, tank_gal: number, suction_in: number, full_lb: number, empty_lb: number): ApparatusTemplate {
  return {
    key, kind: 'pumper', rated_gpm, tank_gal, suction_in, suction_ft: 20, full_lb, empty_lb, height_ft: 10.5, width_ft: 8.3,
    evidence: { rated_gpm: rating, tank_gal: nominal, suction_in: rating, suction_ft: rating, full_lb: weight, empty_lb: weight, height_ft: weight, width_ft: weight },
  }
}

function tender(key: string, tank_gal: number, full_lb: number, empty_lb: number): ApparatusTemplate {
  return {
    key, kind: 'tender', tank_gal, full_lb, empty_lb, height_ft: 10.5, width_ft: 8.3,
    evidence: { tank_gal: nominal, full_lb: weight, empty_lb: weight, height_ft: weight, width_ft: weight },
  }
}

export const apparatusTemplates: readonly ApparatusTemplate[] = [
  pumper('pumper750', 750, 750, 4.5, 32_000, 25_700),
  pumper('pumper1000', 1000, 1000, 6, 38_000, 29_700),
  pumper('pumper1250', 1250, 1000, 6, 40_000, 31_700),
  pumper('pumper1500', 1500, 750, 6, 42_000, 35_700),
  tender('tender1500', 1500, 34_000, 21_500),
  tender('tender2000', 2000, 41_000, 24_300),
  tender('tender3000', 3000, 58_000, 33_000),
  { key: 'portablePump', kind: 'portablePump', rated_gpm: 300, evidence: { rated_gpm: nominal } },
]

export const equipmentTemplates: readonly EquipmentTemplate[] = [
  { key: 'portableTank2000', kind: 'portableTank', capacity_gal: 2000 },
  { key: 'portableTank3000', kind: 'portableTank', capacity_gal: 3000 },
  { key: 'supplyHose4', kind: 'hose', size_in: 4, length_ft: 1000 },
  { key: 'supplyHose5', kind: 'hose', size_in: 5, length_ft: 1000 },
  { key: 'hardSuction6', kind: 'hardSuction', size_in: 6, section_ft: 10, count: 2 },
  { key: 'strainerFloating', kind: 'strainer', style: 'floating' },
  { key: 'jetSiphon', kind: 'jetSiphon', size_in: 6, drive_in: 1.5 },
]
