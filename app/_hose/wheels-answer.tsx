'use client'

import { useMemo } from 'react'
import type { BreakEven, CarriageTrial, HoseOrWheels } from '@/lib/advise/hose-or-wheels'
import { Plot, type PlotProps } from '../_charts/plot'
import { usePlanBoard } from '../_plan/plan-context'
import { displayUnit, formatFrom, formatGiven, formatNumber, formatQuantity, formatShare, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/hose'
import { DataTable } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

/** Each way of bringing the water beside the others, and the distance at which hose and wheels are even. */
export function WheelsAnswer({ found: { best, breakEven, triedCount, short } }: { found: HoseOrWheels }) {
  const { names, result } = usePlanBoard()
  const [system] = useUnitSystem()
  const plot = useMemo(() => breakEven && plotOf(breakEven, names, system), [breakEven, names, system])
  const [first] = best
  const flow = (value: number) => formatGiven(value, system, result?.needed_gpm)
  if (!first) return <p className={styles.quiet}>{say('hose.wheels.nothing')}</p>
  return (
    <>
      <p className={styles.lead}>{say('hose.wheels.best', { carriage: kindWords(first), flow: flow(first.flow_gpm), time: formatFrom(first.ready_s) })}</p>
      <DataTable
        caption={say('hose.wheels.table', { count: triedCount })} rows={best} rowKey={({ carriage }) => carriage}
        columns={[
          { key: 'kind', head: say('hose.wheels.kind'), cell: kindWords },
          { key: 'water', head: say('hose.wheels.water'), cell: (one) => waterWords(one, names) },
          { key: 'flow', head: say('hose.wheels.flow'), isNumber: true, cell: ({ flow_gpm }) => flow(flow_gpm) },
          { key: 'ready', head: say('hose.wheels.ready'), isNumber: true, cell: ({ ready_s }) => formatFrom(ready_s) },
          { key: 'before', head: say('hose.wheels.before'), cell: ({ before }) => (before ? say('hose.wheels.before.of', { flow: flow(before.flow_gpm), time: formatFrom(before.ready_s) }) : say('hose.wheels.before.none')) },
          { key: 'apparatus', head: say('hose.wheels.apparatus'), cell: ({ pumperIds, tenderIds }) => say('hose.wheels.apparatus.of', { pumpers: pumperIds.length, tenders: tenderIds.length }) },
          { key: 'crew', head: say('hose.wheels.crew'), isNumber: true, cell: ({ crewCount }) => formatNumber(crewCount) },
          { key: 'hose', head: say('hose.wheels.hose'), isNumber: true, cell: ({ hose_ft }) => formatQuantity(hose_ft, 'ft', system) },
        ]}
      />
      {short && <p>{say('hose.wheels.short', { hose: formatQuantity(short.hose_ft, 'ft', system), way: formatQuantity(short.way_ft, 'ft', system) })}</p>}
      <p className={styles.quiet}>{say('hose.wheels.note')}</p>
      {breakEven && plot && (
        <>
          <Plot {...plot} />
          <p>{evenWords(breakEven, system)}</p>
          <p className={styles.quiet}>{say('hose.wheels.plot.note')}</p>
        </>
      )}
    </>
  )
}

const kindWords = ({ carriage, hoseShare = 0 }: CarriageTrial): string => (carriage === 'handOver' ? say('hose.wheels.kind.handOver', { share: formatShare(hoseShare) }) : say(`hose.wheels.kind.${carriage}`))

function waterWords({ fromId, otherFromId, isAcross }: CarriageTrial, names: NameOf): string {
  const first = names(fromId) ?? say('issue.unnamed')
  const water = otherFromId === undefined ? first : say('hose.wheels.water.two', { first, second: names(otherFromId) ?? say('issue.unnamed') })
  return isAcross ? say('hose.wheels.water.across', { water }) : water
}

function evenWords({ even }: BreakEven, system: UnitSystem): string {
  return even ? say(`hose.wheels.even.${even.because}`, { distance: formatQuantity(even.distance_mi, 'mi', system), flow: formatGiven(even.flow_gpm, system) }) : say('hose.wheels.even.none')
}

function plotOf(breakEven: BreakEven, names: NameOf, system: UnitSystem): PlotProps {
  const { points, even, fromId } = breakEven
  const mile = displayUnit('mi', system), gpm = displayUnit('gpm', system)
  const distance = (value: number) => formatQuantity(value, 'mi', system)
  const flow = (value: number) => formatGiven(value, system)
  const near = points[0], far = points.at(-1)
  return {
    title: say('hose.wheels.plot', { name: names(fromId) ?? say('issue.unnamed') }),
    heard: say('hose.wheels.plot.heard', {
      near: distance(near?.distance_mi ?? 0), far: distance(far?.distance_mi ?? 0), relayNear: flow(near?.relay_gpm ?? 0), relayFar: flow(far?.relay_gpm ?? 0),
      shuttleNear: flow(near?.shuttle_gpm ?? 0), shuttleFar: flow(far?.shuttle_gpm ?? 0), even: evenWords(breakEven, system),
    }),
    x: points.map(({ distance_mi }) => distance_mi * mile.factor), xWords: (value) => formatNumber(value, 2),
    xLabel: say('hose.wheels.plot.x', { unit: mile.symbol }), yLabel: say('hose.wheels.plot.y', { unit: gpm.symbol }),
    lines: [
      { label: say('hose.wheels.plot.relay'), values: points.map(({ relay_gpm }) => relay_gpm * gpm.factor), colour: '--water', width: 3 },
      { label: say('hose.wheels.plot.shuttle'), values: points.map(({ shuttle_gpm }) => shuttle_gpm * gpm.factor), colour: '--ink', dash: [6, 4] },
    ],
    ...(even && { marks: [{ x: even.distance_mi * mile.factor, label: say('hose.wheels.plot.even') }] }),
    table: {
      head: [say('hose.wheels.plot.distance'), say('hose.wheels.plot.relay'), say('hose.wheels.plot.shuttle')],
      rows: points.map((point) => [distance(point.distance_mi), flow(point.relay_gpm), flow(point.shuttle_gpm)]),
    },
  }
}
