'use client'

import type { Change } from '@/lib/plan'
import { say } from '../_text'
import '../_text/areas/exercise'
import { CountField } from '../_ui/count-field'
import { QuantityField } from '../_ui/quantity-field'

/** How much of it: the one figure that a trouble has, where it has one. */
export function ChangeFigure({ change, onChange }: { change: Change; onChange: (change: Change) => void }) {
  const percent = (label: string, share: number, put: (share: number) => Change) =>
    <CountField label={label} value={Math.round(share * 100)} max={100} onCommit={(count) => { onChange(put((count ?? 0) / 100)) }} />
  const flow = (label: string, flow_gpm: number, min: number, put: (flow_gpm: number) => Change) =>
    <QuantityField label={label} unit="gpm" value={flow_gpm} hasMark={false} isRequired min={min} max={20_000} onCommit={({ value }) => { if (value !== undefined) onChange(put(value)) }} />
  switch (change.kind) {
    case 'unitLate':
      return <CountField label={say('exercise.figure.late')} value={Math.round(change.delay_s / 60)} max={1440} onCommit={(minutes) => { onChange({ ...change, delay_s: (minutes ?? 0) * 60 }) }} />
    case 'fillRate':
      return percent(say('exercise.figure.rate'), change.rateShare, (rateShare) => ({ ...change, rateShare }))
    case 'sourceLow':
      return percent(say('exercise.figure.left'), change.leftShare, (leftShare) => ({ ...change, leftShare }))
    case 'tankTips':
      return percent(say('exercise.figure.lost'), change.lostShare, (lostShare) => ({ ...change, lostShare }))
    case 'layRate':
      return percent(say('exercise.figure.rate'), change.rateShare, (rateShare) => ({ ...change, rateShare }))
    case 'tankLeak':
      return flow(say('exercise.figure.leak'), change.leak_gpm, 0, (leak_gpm) => ({ ...change, leak_gpm }))
    case 'moreDemand':
      return flow(say('exercise.figure.more'), change.add_gpm, -20_000, (add_gpm) => ({ ...change, add_gpm }))
    case 'demand':
      return flow(say('exercise.decide.flow'), change.flow_gpm, 0, (flow_gpm) => ({ ...change, flow_gpm }))
    case 'plan':
    case 'tenderOut':
    case 'sendTender':
    case 'roadClosed':
    case 'roadOpened':
      return null
  }
}
