'use client'

import type { ReactNode } from 'react'
import { FEET_OF_WATER_PER_INCH_OF_MERCURY, SECONDS_PER_MINUTE } from '@/lib/units'
import { displayUnit, formatGiven, formatMinutes, formatQuantity, formatUntil, formatValue, say } from '../_text'
import '../_text/areas/help'
import { DataTable, type Column } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import {
  altitudes_ft, gaugeReading_inHg, highestColumn_ft, HOSE_LENGTH_FT, hoseFlows_gpm, hoseLoss_psi, hoseSizes_in, lastFlows_gpm, lifts_ft,
  portableTanks_gal, rounds_min, tankLasts_s, tenderBrings_gpm, tenderTanks_gal, waters_degF,
} from './cheat-tables'
import styles from './help.module.css'

/** Tables for a first look by hand, in the units in use. */
export function CheatSheets() {
  const [system] = useUnitSystem()
  const show = (value: number, unit: Parameters<typeof formatQuantity>[1]): string => formatQuantity(value, unit, system)
  const highest = (value_ft: number): string => formatQuantity(value_ft, 'ft', system, { toward: 'down' })
  const flows = (list_gpm: readonly number[]) => list_gpm.map((flow) => ({ key: flow, head: formatValue(flow, 'gpm', system) }))
  const perFlow = displayUnit('gpm', system).symbol
  return (
    <div className={styles.sheets}>
      <Sheet note={say('help.hose.note')}>
        <Grid
          caption={say('help.hose', { unit: displayUnit('psi', system).symbol, length: show(HOSE_LENGTH_FT, 'ft') })} head={say('help.hose.size', { unit: perFlow })}
          rows={hoseSizes_in} name={(size) => show(size, 'in')} columns={flows(hoseFlows_gpm)}
          cell={(size, flow) => { const loss = hoseLoss_psi(size, flow); return loss === undefined ? '–' : formatValue(loss, 'psi', system) }}
        />
      </Sheet>
      <Sheet note={say('help.round.note')}>
        <Grid
          caption={say('help.round')} head={say('help.round.tank')} rows={tenderTanks_gal} name={(tank) => show(tank, 'gal')}
          columns={rounds_min.map((round) => ({ key: round, head: formatMinutes(round * SECONDS_PER_MINUTE) }))}
          cell={(tank, round) => formatGiven(tenderBrings_gpm(tank, round), system)}
        />
      </Sheet>
      <Sheet note={say('help.gauge.note', { ratio: formatQuantity(1 / FEET_OF_WATER_PER_INCH_OF_MERCURY, 'inHg', system, { digits: 2 }), foot: show(1, 'ft') })}>
        <Grid
          caption={say('help.gauge')} head={say('help.gauge.lift')} rows={lifts_ft} name={(lift) => show(lift, 'ft')}
          columns={[{ key: 0, head: say('help.gauge.reading') }]} cell={(lift) => show(gaugeReading_inHg(lift), 'inHg')}
        />
      </Sheet>
      <Sheet note={say('help.highest.note')}>
        <Grid
          caption={say('help.highest')} head={say('help.highest.altitude')} rows={altitudes_ft} name={(altitude) => show(altitude, 'ft')}
          columns={waters_degF.map((water) => ({ key: water, head: show(water, 'degF') }))} cell={(altitude, water) => highest(highestColumn_ft(altitude, water))}
        />
      </Sheet>
      <Sheet note={say('help.last.note')}>
        <Grid
          caption={say('help.last')} head={say('help.last.tank', { unit: perFlow })} rows={portableTanks_gal} name={(tank) => show(tank, 'gal')}
          columns={flows(lastFlows_gpm)} cell={(tank, flow) => formatUntil(tankLasts_s(tank, flow))}
        />
      </Sheet>
    </div>
  )
}

function Sheet({ note, children }: { note: string; children: ReactNode }) {
  return (
    <div className={styles.sheet}>
      {children}
      <p className={styles.note}>{note}</p>
    </div>
  )
}

type GridProps = {
  caption: string
  head: string
  rows: readonly number[]
  name: (row: number) => string
  columns: readonly { readonly key: number; readonly head: string }[]
  cell: (row: number, column: number) => string
}

/** A table by two numbers. */
function Grid({ caption, head, rows, name, columns, cell }: GridProps) {
  const all: Column<number>[] = [
    { key: 'name', head, cell: name },
    ...columns.map((column): Column<number> => ({ key: String(column.key), head: column.head, isNumber: true, cell: (row) => cell(row, column.key) })),
  ]
  return <DataTable caption={caption} columns={all} rows={rows} rowKey={String} />
}
