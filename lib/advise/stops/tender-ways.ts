import type { TenderSpec, WaySpec } from '../../shuttle'

/** The pairs of sites a tender may drive between: those it chooses from, else its own two. */
export function waysOfTender({ ways, dumpIndex, fillIndex, toFill_s, toDump_s, lanesToFill, lanesToDump }: TenderSpec): readonly WaySpec[] {
  return ways ?? [{ dumpIndex, fillIndex, toFill_s, toDump_s, ...(lanesToFill && { lanesToFill }), ...(lanesToDump && { lanesToDump }) }]
}

/**
 * A tender that is left with these ways only.
 *
 * @returns undefined when none is left; one that cannot come to its own dump site any more is taken to arrive at another at the same time
 */
export function withWays(tender: TenderSpec, left: readonly WaySpec[]): TenderSpec | undefined {
  const own = left.find(({ dumpIndex, fillIndex }) => dumpIndex === tender.dumpIndex && fillIndex === tender.fillIndex)
    ?? left.find(({ dumpIndex }) => dumpIndex === tender.dumpIndex) ?? left[0]
  if (!own) return undefined
  const { ways: _ways, lanesToFill: _toFill, lanesToDump: _toDump, ...rest } = tender
  return { ...rest, ...own, ...(left.length > 1 && { ways: left }) }
}

/** All tenders with the ways that are kept; those without any are left out. */
export const tendersKeeping = (tenders: readonly TenderSpec[], keep: (way: WaySpec) => boolean): TenderSpec[] =>
  tenders.flatMap((tender) => withWays(tender, waysOfTender(tender).filter(keep)) ?? [])
