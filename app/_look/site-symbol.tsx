import { pillOf, siteShapes } from './site-shapes'
import type { SiteKind } from './site-shapes'

export type SiteSymbolProps = {
  kind: SiteKind
  /** Edge in pixels; 20 in lists, 28 on the map. */
  size?: number
  /** A letter or number of its own, say of the second fill site. */
  letter?: string
  /** Spoken name. Without it the symbol is decoration beside its words. */
  label?: string
  /** Drawn hollow and dashed: placed, but no part of the plan yet. */
  isGhost?: boolean
}

/** More width for each letter over two, in units of the shape. */
const WIDER = 6

/** Symbol of a kind of place. */
export function SiteSymbol({ kind, size = 20, letter, label, isGhost = false }: SiteSymbolProps) {
  const shape = siteShapes[kind]
  const fill = isGhost ? 'sheet' : shape.fill
  const ink = isGhost ? (shape.stroke === 'water' ? 'water' : 'ink') : shape.ink
  // A pill of letters is as wide as what is written in it.
  const wider = kind === 'tender' ? WIDER * Math.max(0, (letter?.length ?? 0) - 2) : 0
  const path = wider > 0 ? pillOf(wider) : shape.path
  return (
    <svg
      width={(size * (26 + wider)) / 26}
      height={size}
      viewBox={`-1 -1 ${26 + wider} 26`}
      {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}
      data-site={kind}
    >
      <path d={path} fill="none" stroke="var(--sheet)" strokeWidth={4} strokeLinejoin="round" />
      <path
        d={path}
        fill={`var(--${fill})`}
        stroke={`var(--${shape.stroke})`}
        strokeWidth={2}
        strokeLinejoin="round"
        {...(isGhost && { strokeDasharray: '3 2.5' })}
      />
      <text
        x={shape.letterX + wider / 2}
        y={shape.letterY}
        dy="0.36em"
        textAnchor="middle"
        fontSize={11.5}
        fontWeight={700}
        fontFamily="var(--font)"
        fill={`var(--${ink})`}
      >
        {letter ?? shape.letter}
      </text>
    </svg>
  )
}
