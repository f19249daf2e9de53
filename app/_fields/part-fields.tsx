'use client'

import type { ReactNode } from 'react'
import { ItemContextProvider, useItem } from './item-context'
import styles from './part-fields.module.css'

/**
 * Fields of a part inside an item, such as the suction of a fill site: the part is kept whole,
 * begun from `base` when its first field is set, and taken away with its last.
 *
 * @param isSaid a part that counts by being there: one entered just as `base` has it stays until a field is cleared
 */
export function PartFields({ label, field, part, base, isSaid = false, children }: { label: string; field: string; part: Readonly<Record<string, unknown>> | undefined; base: Readonly<Record<string, unknown>>; isSaid?: boolean; children: ReactNode }) {
  const outer = useItem()
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>{label}</legend>
      <ItemContextProvider
        value={{
          ...outer,
          part: field,
          item: { ...(part ?? {}), id: outer.item.id, evidence: partEvidence(outer.item.evidence, field) },
          set: (fields, evidence) => {
            const merged: Record<string, unknown> = { ...(part ?? base) }
            for (const [name, value] of Object.entries(fields)) {
              if (value !== undefined) merged[name] = value
              else if (name in base) merged[name] = base[name]
              else delete merged[name]
            }
            const isBase = Object.keys(merged).every((name) => merged[name] === base[name])
            const isCleared = Object.values(fields).some((value) => value === undefined)
            outer.set({ [field]: isBase && (isCleared || !isSaid) ? undefined : merged }, evidence && Object.fromEntries(Object.entries(evidence).map(([name, value]) => [`${field}.${name}`, value])))
          },
        }}
      >
        <div className={styles.fields}>{children}</div>
      </ItemContextProvider>
    </fieldset>
  )
}

function partEvidence<E>(evidence: Readonly<Record<string, E>> | undefined, field: string): Record<string, E> {
  return Object.fromEntries(Object.entries(evidence ?? {}).flatMap(([name, value]) => (name.startsWith(`${field}.`) ? [[name.slice(field.length + 1), value]] : [])))
}
