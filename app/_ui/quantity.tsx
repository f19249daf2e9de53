'use client'

import type { Unit } from '@/lib/units'
import { formatQuantity } from '../_text'
import type { QuantityFormat } from '../_text'
import styles from './quantity.module.css'
import { useUnitSystem } from './unit-system-context'

/** A figure in running text, in the units in use; never broken over two lines. */
export function Quantity({ value, unit, ...format }: { value: number | undefined; unit: Unit } & QuantityFormat) {
  const [system] = useUnitSystem()
  return <span className={styles.quantity}>{formatQuantity(value, unit, system, format)}</span>
}
