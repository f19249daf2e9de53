import { handFigureOf } from '../hand-figure'
import type { CompiledPlan } from '../compile-plan'
import type { ResolvedTender } from '../tender'
import { roundOf } from '../../shuttle'
import type { Working } from '../working'
import { isWay } from '../ways'
import { SECONDS_PER_MINUTE } from '../../units'
import { computed, given, worked, working } from './inputs'
import { explainWay } from './explain-way'

const RATING = 'hauled-water form A: (tank − 10 %) / (fill + travel + discharge), added over tenders'

/** The handbook's figure, tender by tender. */
export function explainHandFigure(compiled: CompiledPlan): Working {
  return working('hand-figure', 'flow_gpm', handFigureOf(compiled), RATING,
    compiled.tenders.map((tender) => worked('tender_gpm', explainTenderHand(compiled, tender))))
}

/** One tender's usable water over its round. */
export function explainTenderHand(compiled: CompiledPlan, resolved: ResolvedTender): Working {
  const round = explainRound(compiled, resolved)
  const { usable_gal } = resolved.spec
  return working('tender-hand', 'flow_gpm', usable_gal / (round.value / SECONDS_PER_MINUTE), RATING, [worked('usable_gal', explainUsable(compiled, resolved)), worked('cycle_s', round)])
}

function explainUsable({ ledger }: CompiledPlan, { tender, spec }: ResolvedTender): Working {
  const tank_gal = tender.tank_gal ?? 0
  return working('usable-tank', 'usable_gal', spec.usable_gal, 'hauled-water form A: tank less 10 %', [given(ledger, tender, 'tank_gal', tank_gal), given(ledger, tender, 'usableShare', tank_gal > 0 ? spec.usable_gal / tank_gal : 0)])
}

/** A round with nobody in the way. */
export function explainRound(compiled: CompiledPlan, { tender, spec, fillSiteId, dumpSiteId }: ResolvedTender): Working {
  const { ledger, ways, fills } = compiled
  const rate_gpm = fills.find(({ site }) => site.id === fillSiteId)?.bayRate_gpm[0] ?? 0
  const { fill_s, dump_s, cycle_s } = roundOf(spec, rate_gpm)
  const way = (fromId: string, toId: string, symbol: string, travel_s: number) => {
    const row = ways.rows.find(({ use }) => use.apparatusId === tender.id && use.fromId === fromId && use.toId === toId)
    return row && isWay(row.way) ? worked(symbol, explainWay(compiled, row.use, row.way)) : computed(symbol, travel_s)
  }
  return working('round', 'cycle_s', cycle_s, '', [
    given(ledger, tender, 'dumpPosition_s', spec.dumpPosition_s),
    worked('dump_s', working('dump-time', 'dump_s', dump_s, '', [computed('usable_gal', spec.usable_gal), given(ledger, tender, 'dump_gpm', spec.dumpRate_gpm[0] ?? 0)])),
    given(ledger, tender, 'dumpClear_s', spec.dumpClear_s),
    way(dumpSiteId, fillSiteId, 'toFill_s', spec.toFill_s),
    given(ledger, tender, 'fillPosition_s', spec.fillPosition_s),
    worked('fill_s', working('fill-time', 'fill_s', fill_s, 'the last tenth at half the rate is assumed', [
      computed('usable_gal', spec.usable_gal), computed('bayRate_gpm', Math.min(rate_gpm, spec.fillLimit_gpm)), computed('topUpShare', spec.topUpShare), computed('topUpRateShare', spec.topUpRateShare),
    ])),
    given(ledger, tender, 'fillClear_s', spec.fillClear_s),
    way(fillSiteId, dumpSiteId, 'toDump_s', spec.toDump_s),
  ])
}
