import type { Way } from '../legs'
import type { HandbookRound } from './handbook-round'
import type { SimulatedRound } from './simulated-round'

type KnownBy = 'measured' | 'routed' | 'formula'

/** A part of a round that is longer or shorter than the form has it. Words: message files. */
export type PartCode =
  | `empty-${KnownBy}` | `loaded-${KnownBy}`
  | 'dump-tail' | 'top-up' | 'bay-shared' | 'source-slow' | 'dumping' | 'chosen-ways' | 'wait-fill' | 'wait-dump' | 'wait-road' | 'rest' | 'away'

/** By how much a part of a round is longer than the form has it, of one round; negative: shorter. */
export type RoundPart = { readonly code: PartCode; readonly more_s: number }

/** What a reader must know beside the times: another load counted, a straight line driven, no round made. */
export type RoundNote = 'load' | 'way-straight' | 'no-round'

/** The way out to the fill site and the way back, as the plan has them. */
export type DrivenWays = { readonly empty: Way | undefined; readonly loaded: Way | undefined }

/**
 * What takes the round of form B to the round as simulated, part by part.
 *
 *   Σ parts = simulated round − form's round        (the plan's own round, where no whole round is simulated)
 *
 * Each part is the difference of one thing in both rounds, so the order in which they are taken does not matter, nothing is
 * counted twice, and nothing is left over: the way out and the way back are parts of their own.
 *
 * @param isSourceDry the source gave out while it filled there
 * @returns every part that is not 0, however small
 */
export function roundParts(form: HandbookRound, own: HandbookRound, simulated: SimulatedRound | undefined, ways: DrivenWays, isSourceDry: boolean): RoundPart[] {
  const planned: RoundPart[] = [
    { code: `empty-${knownBy(ways.empty)}`, more_s: own.toFill_s - form.toFill_s },
    { code: `loaded-${knownBy(ways.loaded)}`, more_s: own.toDump_s - form.toDump_s },
    { code: 'dump-tail', more_s: own.dumpSite_s - form.dumpSite_s },
    { code: 'top-up', more_s: own.fillSite_s - form.fillSite_s },
  ]
  const met: RoundPart[] = simulated
    ? [
      { code: isSourceDry ? 'source-slow' : 'bay-shared', more_s: simulated.fill_s + simulated.fillHandling_s - own.fillSite_s },
      { code: 'dumping', more_s: simulated.dump_s + simulated.dumpHandling_s - own.dumpSite_s },
      { code: 'chosen-ways', more_s: simulated.toFill_s + simulated.toDump_s - own.toFill_s - own.toDump_s },
      { code: 'wait-fill', more_s: simulated.waitToFill_s },
      { code: 'wait-dump', more_s: simulated.waitToDump_s },
      { code: 'wait-road', more_s: simulated.waitAtRoad_s },
      { code: 'rest', more_s: simulated.rest_s },
      { code: 'away', more_s: simulated.away_s },
    ]
    : []
  return [...planned, ...met].filter(({ more_s }) => more_s !== 0)
}

function knownBy(way: Way | undefined): KnownBy {
  return way?.by === 'measured' || way?.by === 'routed' ? way.by : 'formula'
}

/** What a reader must know beside the times of a round. */
export function notesOfRound(form: HandbookRound, own: HandbookRound, simulated: SimulatedRound | undefined, { empty, loaded }: DrivenWays): RoundNote[] {
  return [
    ...(Math.abs(form.counted_gal - (simulated ?? own).counted_gal) > 0.5 ? (['load'] as const) : []),
    ...(empty?.isStraight || loaded?.isStraight ? (['way-straight'] as const) : []),
    ...(simulated ? [] : (['no-round'] as const)),
  ]
}
