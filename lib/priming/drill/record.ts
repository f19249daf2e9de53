import type { DrillRig } from './rig'
import type { DrillControls, DrillState } from './state'
import { controlNames } from './state'
import { columnShare, eyeVacuum_ft, intakeGauge, strainerDepth_ft, tankShare } from './gauges'

/** Columns of a run's record, in order. The intake gauge has a column for each side of its zero; the last seven are the controls. */
export const recordColumns = ['time_s', 'intakePressure_psi', 'intakeVacuum_inHg', 'eyeVacuum_ft', 'discharge_psi', 'speedShare', 'tank_gal', 'tankShare', 'flow_gpm', 'tankOut_gpm',
  'intakeWater_gpm', 'delivered_gpm', 'gasShare', 'columnShare', 'strainerDepth_ft', 'drawn_gal', 'overflow_gal', 'lostDown_gal', 'warm_degF',
  ...controlNames] as const
export type RecordColumn = (typeof recordColumns)[number]

const RECORD_EVERY_S = 0.1

/** A run's gauges at 10 Hz, in one block set aside at the start. */
export type DrillRecord = { readonly rows: Float64Array; rowCount: number; readonly mostRows: number }

/** A record that holds nothing yet. */
export function beginRecord(most_s: number): DrillRecord {
  const mostRows = Math.ceil(most_s / RECORD_EVERY_S) + 2
  return { rows: new Float64Array(mostRows * recordColumns.length), rowCount: 0, mostRows }
}

/** Adds a row; past the block's end nothing is kept. */
export function addRow(record: DrillRecord, rig: DrillRig, state: DrillState, controls: DrillControls): void {
  if (record.rowCount >= record.mostRows) return
  const { rows } = record
  let at = record.rowCount * recordColumns.length
  record.rowCount += 1
  rows[at++] = state.time_s
  const gauge = intakeGauge(rig, state)
  rows[at++] = Math.max(0, gauge)
  rows[at++] = Math.max(0, -gauge)
  rows[at++] = eyeVacuum_ft(rig, state)
  rows[at++] = state.dischargePressure_psi
  rows[at++] = state.speedShare
  rows[at++] = state.tankWater_gal
  rows[at++] = tankShare(rig, state)
  rows[at++] = state.flow_gpm
  rows[at++] = state.tankOut_gpm
  rows[at++] = state.intakeWater_gpm
  rows[at++] = state.delivered_gpm
  rows[at++] = state.gasShare
  rows[at++] = columnShare(rig, state)
  rows[at++] = strainerDepth_ft(rig, state)
  rows[at++] = state.drawn_gal
  rows[at++] = state.overflow_gal
  rows[at++] = state.lostDown_gal
  rows[at++] = state.warm_degF
  for (const control of controlNames) rows[at++] = controls[control]
}

/** One column of the record. */
export function columnOf(record: DrillRecord, column: RecordColumn): Float64Array {
  const at = recordColumns.indexOf(column)
  const values = new Float64Array(record.rowCount)
  for (let row = 0; row < record.rowCount; row++) values[row] = record.rows[row * recordColumns.length + at] ?? 0
  return values
}

/** The record as rows of a table, names first. */
export function recordRows(record: DrillRecord): (string | number)[][] {
  const table: (string | number)[][] = [[...recordColumns]]
  for (let row = 0; row < record.rowCount; row++) {
    const from = row * recordColumns.length
    table.push(Array.from(record.rows.subarray(from, from + recordColumns.length), (value) => Number(value.toFixed(4))))
  }
  return table
}
