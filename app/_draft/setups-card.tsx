'use client'

import { useMemo, useState } from 'react'
import { changedByOne, everySize, type DraftCapacity, type SuctionVariant } from '@/lib/hydraulics'
import { draftWith, explainDraw, type DraftSheet } from '@/lib/supply'
import { displayUnit, formatChange, formatQuantity, formatValue, inUnits, say, type NameOf } from '../_text'
import '../_text/areas/draft'
import { Card } from '../_ui/card'
import { DataTable, type Column } from '../_ui/data-table'
import { joinClasses } from '../_ui/join-classes'
import { Segments } from '../_ui/segments'
import { useUnitSystem } from '../_ui/unit-system-context'
import { WorkingPanel } from '../_ui/open-working'
import styles from './draft.module.css'
import { rangeValue, setupText } from './sheet-words'

type Row = SuctionVariant & { readonly key: string; readonly capacity: DraftCapacity }

/** Suction set-ups beside each other for this pumper at this lift: flow, what limits it, gauge, cover. */
export function SetupsCard({ sheet, names }: { sheet: DraftSheet; names: NameOf }) {
  const [system] = useUnitSystem()
  const [kind, setKind] = useState<'one' | 'all'>('one')
  const [openKey, setOpenKey] = useState<string>()
  const rows = useMemo(() => {
    const variants = kind === 'one' ? changedByOne(sheet.suction, sheet.pump.intakeLoss_ft) : everySize(sheet.suction)
    return variants.map((variant, index): Row => ({ ...variant, key: `${variant.change}-${index}`, capacity: draftWith(sheet, { suction: variant.setup }) }))
  }, [sheet, kind])
  const base_gpm = sheet.capacity.flow_gpm
  const unit = (of: 'gpm' | 'inHg' | 'ft') => displayUnit(of, system).symbol
  const columns: readonly Column<Row>[] = [
    { key: 'setup', head: say('draft.setups.setup'), cell: (row) => <span className={joinClasses(styles.setup, row.change === 'none' && styles.own)}>{setupText(row.setup, system)}{row.change === 'none' && <span className={styles.tag}>{say('draft.setups.own')}</span>}</span> },
    {
      key: 'flow', head: say('draft.flow'), unit: unit('gpm'), isNumber: true, sortBy: (row) => row.capacity.flow_gpm,
      cell: (row) => (
        <button type="button" className={styles.figure} aria-expanded={openKey === row.key} title={say('working.open', { figure: setupText(row.setup, system) })} onClick={() => { setOpenKey(openKey === row.key ? undefined : row.key) }}>
          {rangeValue(row.capacity.flowLow_gpm, row.capacity.flowHigh_gpm, 'gpm', system)}
        </button>
      ),
    },
    { key: 'change', head: say('draft.setups.change'), isNumber: true, sortBy: (row) => row.capacity.flow_gpm - base_gpm, cell: (row) => changeText(row.change === 'none' ? undefined : formatChange(base_gpm, row.capacity.flow_gpm, system)) },
    { key: 'limit', head: say('draft.setups.limit'), cell: (row) => say(`draft.limit.${row.capacity.limitedBy}`) },
    { key: 'gauge', head: say('draft.setups.gauge'), unit: unit('inHg'), isNumber: true, cell: (row) => (row.capacity.flow_gpm > 0 ? rangeValue(row.capacity.vacuumLow_inHg, row.capacity.vacuumHigh_inHg, 'inHg', system) : say('draft.setups.none')) },
    { key: 'rule', head: say('draft.setups.rule'), unit: unit('ft'), isNumber: true, cell: (row) => coverText(row, 'rule_ft') },
    { key: 'vortex', head: say('draft.setups.vortex'), unit: unit('ft'), isNumber: true, cell: (row) => coverText(row, 'vortex_ft') },
  ]
  const coverText = (row: Row, which: 'rule_ft' | 'vortex_ft') => {
    const cover = row.capacity.strainerCover
    if (!cover || row.capacity.flow_gpm <= 0) return say('draft.setups.none')
    return which === 'vortex_ft' && cover.vortex_ft > cover.rule_ft ? <span className={styles.more}>{formatValue(cover.vortex_ft, 'ft', system)}</span> : formatValue(cover[which], 'ft', system)
  }
  const open = rows.find(({ key }) => key === openKey)
  return (
    <Card title={say('draft.setups')} summary={say('draft.setups.summary', { pump: sheet.pump.name, lift: formatQuantity(sheet.place.lift_ft, 'ft', system) })} startsOpen>
      <Segments label={say('draft.setups.show')} value={kind} onCommit={setKind} choices={[{ value: 'one', label: say('draft.setups.one') }, { value: 'all', label: say('draft.setups.all') }]} />
      <DataTable caption={say('draft.setups.caption')} isCaptionHidden columns={columns} rows={rows} rowKey={({ key }) => key} />
      {open && <WorkingPanel title={setupText(open.setup, system)} working={explainDraw(sheet, { capacity: open.capacity, suction: open.setup })} names={names} onClose={() => { setOpenKey(undefined) }} />}
      <p className={styles.quiet}>{inUnits(say('draft.setups.cover-conflict'), system)}</p>
    </Card>
  )
}

const changeText = (text: string | undefined): string => (text === undefined ? say('draft.setups.none') : /^[1-9]/.test(text) ? `+${text}` : text)
