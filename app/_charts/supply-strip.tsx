'use client'

import { formatGiven, linkText, say, UNIT_SPACE } from '../_text'
import type { NameOf } from '../_text'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { ChainPart, LinkKind, SupplyResult } from '@/lib/supply'
import styles from './supply-strip.module.css'

/** The part of the chain that a link belongs to. */
export const partOfLink: Readonly<Record<LinkKind, ChainPart['part']>> = {
  source: 'source', fillRate: 'fill', fillHandling: 'fill', road: 'road', dumpRate: 'dump', dumpHandling: 'dump', portableTank: 'dump', dumpPump: 'fireGround', hoseLay: 'source',
}

export type SupplyStripProps = {
  result: Pick<SupplyResult, 'chain' | 'limitingLink' | 'sustainable_gpm' | 'needed_gpm'> & Partial<Pick<SupplyResult, 'issues'>>
  names: NameOf
  chosen?: ChainPart['part'] | undefined
  /** Without it the parts are only read. */
  onChoose?: ((part: ChainPart['part']) => void) | undefined
  /** Flow at the full width of the band; strips that stand together share one. Default: the plan's own. */
  full_gpm?: number
  /** What has passed, not what could. */
  isMoved?: boolean
}

export const STRIP_HEIGHT = 64
/** Parts wider than this times the narrowest are drawn no wider: the figure says the rest. */
const MOST_TIMES = 3
/** How much of a column the band takes to widen or narrow. */
const EASE = 0.22

/** Flow at the full width of the band of one plan, or of several at one scale: wide enough for the need, not so wide that the narrowest part is lost. */
export function fullWidthOf(...results: readonly Pick<SupplyResult, 'chain' | 'needed_gpm'>[]): number {
  return Math.max(1, ...results.flatMap(({ chain, needed_gpm }) => (chain.length === 0 ? [] : [Math.min(...knownOf(chain)) * MOST_TIMES, needed_gpm ?? 0])))
}

/** Only the source, where no water is named, is not known; the fire ground is. */
const knownOf = (chain: readonly Pick<ChainPart, 'capacity_gpm'>[]): number[] => chain.flatMap(({ capacity_gpm }) => (capacity_gpm === null ? [] : [capacity_gpm]))

/**
 * The chain from source to fire ground as one band whose width is capacity; the narrowest place shows at a glance. What a part could
 * pass is no water that comes: it is said so at each, and the fire ground has what is expected there beside it.
 */
export function SupplyStrip({ result, names, chosen, onChoose, full_gpm, isMoved = false }: SupplyStripProps) {
  const [system] = useUnitSystem()
  const { chain, limitingLink, needed_gpm, sustainable_gpm } = result
  if (chain.length === 0) return <p className={styles.empty}>{say('plan.strip.empty')}</p>
  const narrowest = Math.min(...knownOf(chain))
  const full = full_gpm ?? fullWidthOf(result)
  const half = (flow_gpm: number) => halfOf(flow_gpm, full)
  const unknown = result.issues?.find(({ code }) => code === 'source-volume-unknown' || code === 'source-flow-unknown')
  const limiting = limitingLink ? partOfLink[limitingLink.kind] : undefined
  return (
    <div className={styles.strip} role="group" aria-label={say(`plan.strip.${isMoved ? 'moved-label' : 'label'}`)}>
      <svg className={styles.picture} viewBox={`0 0 ${chain.length * 100} ${STRIP_HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        <path className={styles.band} d={chainBand(chain, half)} />
        {sustainable_gpm !== null && <path className={styles.flow} d={chainBand(chain, () => half(sustainable_gpm))} />}
        {needed_gpm !== null && [-1, 1].map((side) => (
          <line key={side} className={styles.need} x1="0" x2={chain.length * 100} y1={STRIP_HEIGHT / 2 + side * half(needed_gpm)} y2={STRIP_HEIGHT / 2 + side * half(needed_gpm)} />
        ))}
      </svg>
      <ol className={styles.parts}>
        {chain.map(({ part, capacity_gpm }) => {
          const isLimit = part === limiting
          const look = joinClasses(styles.part, isLimit && styles.limit, part === chosen && styles.chosen)
          const words = (
            <>
              <span className={styles.name}>{say(`plan.part.${part}`)}</span>
              {!isMoved && capacity_gpm !== null && <span className={styles.could}>{say('plan.strip.could')}</span>}
              <Figure words={formatGiven(capacity_gpm, system)} />
              {capacity_gpm === null && <span className={styles.why}>{say('plan.strip.unnamed')}</span>}
              {isLimit && limitingLink && <span className={styles.why} title={linkText(limitingLink, names)}>{say('plan.strip.limits')}</span>}
              {!isLimit && narrowest > 0 && capacity_gpm === narrowest && <span className={styles.why}>{say('plan.strip.narrowest')}</span>}
              {part === 'fireGround' && sustainable_gpm !== null && <span className={styles.why}>{say('plan.strip.expected', { expected: formatGiven(sustainable_gpm, system, needed_gpm) })}</span>}
              {part === 'source' && unknown && <span className={styles.why}>{say(`plan.strip.${unknown.code === 'source-flow-unknown' ? 'flow' : 'volume'}-unknown`)}</span>}
            </>
          )
          return (
            <li key={part}>
              {onChoose
                ? <button type="button" className={look} aria-pressed={part === chosen} onClick={() => { onChoose(part) }}>{words}</button>
                : <div className={joinClasses(look, styles.read)}>{words}</div>}
            </li>
          )
        })}
      </ol>
    </div>
  )
}

/** A figure with its unit, which goes under it where a column is narrow. */
function Figure({ words }: { words: string }) {
  const [amount, unit] = words.split(UNIT_SPACE)
  return <span className={styles.figure}>{amount}{unit !== undefined && <> <span className={styles.unit}>{unit}</span></>}</span>
}

/** Half the width of the band for a flow, as drawn: at least a hair, at most the whole strip but its margin. */
export const halfOf = (flow_gpm: number, full_gpm: number): number => Math.max(1, (Math.min(flow_gpm, full_gpm) / full_gpm) * (STRIP_HEIGHT / 2 - 3))

/** The band of a chain: what is not known is left open, at its head. */
export function chainBand(chain: readonly Pick<ChainPart, 'capacity_gpm'>[], half: (capacity_gpm: number) => number): string {
  const known = knownOf(chain)
  return bandPath(known.map(half), chain.length - known.length)
}

/** Outline of a band, symmetric about the middle, that eases from one half-width to the next at the column edges; `open` columns stay empty before it. */
function bandPath(halves: readonly number[], open: number): string {
  const middle = STRIP_HEIGHT / 2
  const edge = (side: 1 | -1, order: readonly number[]) => order.map((index) => {
    const half = halves[index] ?? 0
    const column = open + index
    const left = column * 100 + EASE * 50
    const right = (column + 1) * 100 - EASE * 50
    const y = middle + side * half
    const [a, b] = side === -1 ? [left, right] : [right, left]
    const next = halves[index + (side === -1 ? 1 : -1)]
    const to = side === -1 ? (column + 1) * 100 + EASE * 50 : column * 100 - EASE * 50
    const bend = next === undefined ? '' : `C${(b + to) / 2} ${y} ${(b + to) / 2} ${middle + side * next} ${to} ${middle + side * next}`
    return `L${a} ${y}L${b} ${y}${bend}`
  }).join('')
  const forward = halves.map((_, index) => index)
  const first = halves[0] ?? 0
  const last = halves.at(-1) ?? 0
  const end = (open + halves.length) * 100
  return `M${open * 100} ${middle - first}${edge(-1, forward)}L${end} ${middle - last}L${end} ${middle + last}${edge(1, forward.toReversed())}L${open * 100} ${middle + first}Z`
}
