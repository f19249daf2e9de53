'use client'

import { createContext, use, useCallback, useMemo, useState, type KeyboardEvent, type ReactNode } from 'react'
import type { EvidenceMark } from '@/lib/evidence'
import { askedMarks } from './evidence-ask'
import type { SaidMarks } from './typed-evidence'

type Usual = { readonly mark: EvidenceMark | undefined; readonly set: (mark: EvidenceMark) => void }

const UsualMarkContext = createContext<Usual>({ mark: undefined, set: () => undefined })

/** Within it, what was last said about how a figure is known goes on for the next one, until another item is at hand. */
export function UsualMarkProvider({ itemId, children }: { itemId: string; children: ReactNode }) {
  const [said, setSaid] = useState<{ itemId: string; mark: EvidenceMark }>()
  const mark = said?.itemId === itemId ? said.mark : undefined
  const set = useCallback((next: EvidenceMark) => { setSaid({ itemId, mark: next }) }, [itemId])
  return <UsualMarkContext value={useMemo(() => ({ mark, set }), [mark, set])}>{children}</UsualMarkContext>
}

export type MarkSaying = SaidMarks & {
  readonly choose: (mark: EvidenceMark) => void
  /** A figure is about to be typed. */
  readonly begin: () => void
  /** Up and down in a field that is being typed in say the next way of knowing. @param shown the one that stands there now */
  readonly onKeyDown: (event: KeyboardEvent, shown: EvidenceMark | undefined) => void
}

/** What is said in one field about how its figure is known. */
export function useMarkSaying(): MarkSaying {
  const { mark: usual, set } = use(UsualMarkContext)
  const [chosen, setChosen] = useState<EvidenceMark>()
  const choose = (mark: EvidenceMark) => {
    setChosen(mark)
    set(mark)
  }
  return {
    chosen, usual, choose,
    begin: () => { setChosen(undefined) },
    onKeyDown: (event, shown) => {
      if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
      event.preventDefault()
      choose(nextMark(shown, event.key === 'ArrowDown' ? 1 : -1))
    },
  }
}

/** The way of knowing after or before one; the first or the last where none was said. */
export function nextMark(shown: EvidenceMark | undefined, by: 1 | -1): EvidenceMark {
  const at = askedMarks.findIndex((mark) => mark === shown)
  const next = at < 0 ? (by > 0 ? 0 : askedMarks.length - 1) : (at + by + askedMarks.length) % askedMarks.length
  return askedMarks[next] ?? 'assumed'
}
