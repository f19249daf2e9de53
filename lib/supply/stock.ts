import type { StrainerKind, SuctionSetup } from '../hydraulics'
import { issue, type Issue } from '../issue'
import type { Bundle, DraftingPump, Equipment, Source } from '../plan'

/** Hose or hard suction of one size that a unit carries, all of it together. */
export type Stock = { readonly size_in: number; readonly length_ft: number }

/** Smaller hose is for attack lines: it carries no supply worth laying. Assumed. [in] */
export const LEAST_SUPPLY_IN = 2.5

const carriedBy = ({ district }: Pick<Bundle, 'district'>, unitId: string): Equipment[] => district.equipment.filter((item) => item.carriedBy === unitId)

function bySize(pieces: readonly Stock[]): Stock[] {
  const sizes = [...new Set(pieces.map(({ size_in }) => size_in))].sort((a, b) => a - b)
  return sizes.map((size_in) => ({ size_in, length_ft: pieces.reduce((sum, piece) => sum + (piece.size_in === size_in ? piece.length_ft : 0), 0) }))
}

/**
 * Hard suction that a pump brings, by size, smallest first: as listed in the equipment, else as its own fields say.
 *
 * @returns undefined when nothing at all is said of it
 */
export function findSuctionOf(docs: Pick<Bundle, 'district'>, pump: DraftingPump): Stock[] | undefined {
  const listed = carriedBy(docs, pump.id).flatMap((item) => (item.kind === 'hardSuction' ? [{ size_in: item.size_in, length_ft: item.section_ft * (item.count ?? 1) }] : []))
  if (listed.length > 0) return bySize(listed)
  if (pump.kind === 'pumper' && pump.suction_in !== undefined && pump.suction_ft !== undefined) return [{ size_in: pump.suction_in, length_ft: pump.suction_ft }]
  return undefined
}

/**
 * Whether a draft takes more hard suction than its pumper carries. The flow counts on all of it.
 *
 * @param source  a dry hydrant and a pressure hydrant need no run of hard suction to the water
 * @param placeId what the warning is about beside the pumper
 * @returns `suction-not-carried` (warn); undefined where it is enough, or nobody has said what the pumper carries
 */
export function suctionNotCarried(docs: Pick<Bundle, 'district'>, pump: DraftingPump, { size_in, length_ft, lineCount = 1 }: Pick<SuctionSetup, 'size_in' | 'length_ft' | 'lineCount'>, source: Pick<Source, 'kind'> | undefined, placeId: string): Issue | undefined {
  const carried = source?.kind === 'pressureHydrant' || source?.kind === 'dryHydrant' ? undefined : findSuctionOf(docs, pump)
  const carried_ft = lengthOf_ft(carried, size_in)
  const needed_ft = length_ft * lineCount
  return carried && needed_ft > carried_ft ? issue('suction-not-carried', 'warn', [pump.id, placeId], { size_in, carried_ft, needed_ft }) : undefined
}

/**
 * Hose that a pump brings, by size, smallest first: as listed, else its supply hose.
 *
 * @returns undefined when nothing at all is said of it
 */
export function findHoseOf(docs: Pick<Bundle, 'district'>, pump: DraftingPump): Stock[] | undefined {
  const listed = carriedBy(docs, pump.id).flatMap((item) => (item.kind === 'hose' ? [{ size_in: item.size_in, length_ft: item.length_ft }] : []))
  if (listed.length > 0) return bySize(listed)
  if (pump.kind === 'pumper' && pump.supplyHose_in !== undefined && pump.supplyHose_ft !== undefined) return [{ size_in: pump.supplyHose_in, length_ft: pump.supplyHose_ft }]
  return undefined
}

/** Kinds of strainer that a pump is listed to bring; none where nobody has listed any. */
export const findStrainersOf = (docs: Pick<Bundle, 'district'>, pump: DraftingPump): StrainerKind[] =>
  carriedBy(docs, pump.id).flatMap((item) => (item.kind === 'strainer' ? [item.style] : []))

/** Hose of a size in a stock, 0 where there is none. [ft] */
export const lengthOf_ft = (stock: readonly Stock[] | undefined, size_in: number): number => stock?.find((one) => one.size_in === size_in)?.length_ft ?? 0
