'use client'

import { findUnit } from '@/lib/units'
import { fieldLabel, inUnits } from '../_text'
import { CheckField } from '../_ui/check-field'
import { ChoiceField, type Choice } from '../_ui/choice-field'
import { CountField } from '../_ui/count-field'
import { QuantityField } from '../_ui/quantity-field'
import { TextField } from '../_ui/text-field'
import type { StandIn } from '../_ui/typed-evidence'
import { useUnitSystem } from '../_ui/unit-system-context'
import { choiceLabel } from './choice-label'
import { fieldRule } from './field-rule'
import { useItem } from './item-context'

type Common = { field: string; label?: string; hint?: string }

const asNumber = (value: unknown): number | undefined => (typeof value === 'number' ? value : undefined)
const asText = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)
const titled = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const labelOf = ({ field, label }: Common): string => label ?? titled(fieldLabel(field))

/** A quantity of the item, with its evidence; the number used while it is empty is shown in the field. */
export function ItemQuantity({ standIn, absent, ...common }: Common & { standIn?: StandIn | undefined; absent?: string }) {
  const { docKind, collection, item, part, set } = useItem()
  const [system] = useUnitSystem()
  const unit = findUnit(common.field)
  if (!unit) throw new RangeError(`field is ${common.field}, must end in a unit`)
  const { min, max } = fieldRule(docKind, collection, asText(item.kind), common.field, part)
  return (
    <QuantityField
      label={inUnits(labelOf(common), system)}
      unit={unit}
      value={asNumber(item[common.field])}
      evidence={item.evidence?.[common.field]}
      standIn={standIn}
      {...(absent !== undefined && { absent })}
      {...(min !== undefined && { min })}
      {...(max !== undefined && { max })}
      {...(common.hint !== undefined && { hint: inUnits(common.hint, system) })}
      onCommit={({ value, evidence }) => { set({ [common.field]: value }, { [common.field]: value === undefined ? undefined : evidence }) }}
    />
  )
}

/** A whole number of things. */
export function ItemCount({ standIn, ...common }: Common & { standIn?: number }) {
  const { docKind, collection, item, part, set } = useItem()
  const { min, max } = fieldRule(docKind, collection, asText(item.kind), common.field, part)
  return (
    <CountField
      label={labelOf(common)} value={asNumber(item[common.field])}
      {...(min !== undefined && { min })} {...(max !== undefined && { max })} {...(standIn !== undefined && { standIn })} {...(common.hint !== undefined && { hint: common.hint })}
      onCommit={(value) => { set({ [common.field]: value }) }}
    />
  )
}

/** Words or a day. */
export function ItemText({ isLong, isDay, isRequired, ...common }: Common & { isLong?: boolean; isDay?: boolean; isRequired?: boolean }) {
  const { docKind, collection, item, part, set } = useItem()
  const { maxLength } = fieldRule(docKind, collection, asText(item.kind), common.field, part)
  return (
    <TextField
      label={labelOf(common)} value={asText(item[common.field])}
      {...(maxLength !== undefined && { maxLength })} {...(isLong && { isLong })} {...(isDay && { isDay })} {...(isRequired && { isRequired })} {...(common.hint !== undefined && { hint: common.hint })}
      onCommit={(value) => { set({ [common.field]: value }) }}
    />
  )
}

/** One of the choices the document knows, worded by `choice.<field>.<value>`. */
export function ItemChoice({ none, choices, ...common }: Common & { none?: string; choices?: readonly Choice<string>[] }) {
  const { docKind, collection, item, part, set } = useItem()
  const known = choices ?? (fieldRule(docKind, collection, asText(item.kind), common.field, part).choices ?? []).map((value) => ({ value, label: choiceLabel(common.field, value) }))
  return (
    <ChoiceField
      label={labelOf(common)} choices={known} value={asText(item[common.field])}
      {...(none !== undefined && { none })} {...(common.hint !== undefined && { hint: common.hint })}
      onCommit={(value) => { set({ [common.field]: value }) }}
    />
  )
}

/** Yes or no; no is kept as absent. */
export function ItemCheck(common: Common) {
  const { item, set } = useItem()
  const [system] = useUnitSystem()
  return <CheckField label={inUnits(labelOf(common), system)} isChecked={item[common.field] === true} {...(common.hint !== undefined && { hint: common.hint })} onCommit={(isChecked) => { set({ [common.field]: isChecked || undefined }) }} />
}
