'use client'

import { useState } from 'react'
import type { Problem } from '@/lib/exchange'
import { say } from '../_text'
import '../_text/areas/exchange'
import { Button } from '../_ui/button'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { problemWords } from './exchange-words'
import styles from './exchange.module.css'

const PAGE = 50

/** What is wrong in a file, one sentence each, beginning with its row and column. */
export function ProblemList({ title, problems, isTable, isBad = false }: { title: string; problems: readonly Problem[]; isTable: boolean; isBad?: boolean }) {
  const [system] = useUnitSystem()
  const [shownCount, setShownCount] = useState(PAGE)
  return (
    <div>
      <h4 className={styles.small}>{title}</h4>
      <ul className={joinClasses(styles.problems, isBad && styles.bad)} aria-label={title}>
        {problems.slice(0, shownCount).map((problem, i) => <li key={i}>{problemWords(problem, isTable, system)}</li>)}
      </ul>
      {problems.length > shownCount && <Button size="s" look="quiet" label={say('exchange.more', { count: problems.length - shownCount })} onClick={() => { setShownCount(shownCount + PAGE) }} />}
    </div>
  )
}
