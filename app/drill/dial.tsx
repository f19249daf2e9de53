import type { Tick } from './dial-scale'
import styles from './dial.module.css'

export type DialMark = Tick & { readonly angle_deg: number }

export type DialProps = {
  name: string
  part: string
  marks: readonly DialMark[]
  zero_deg: number
  /** Units of what is written at the left and at the right; a dial with two has two sides. */
  units: readonly [string, string?]
}

/** Point on a circle about the dial's middle, straight up at 0. */
const place = (angle_deg: number, radius: number): readonly [number, number] => {
  const angle = ((angle_deg - 90) * Math.PI) / 180
  return [60 + radius * Math.cos(angle), 62 + radius * Math.sin(angle)]
}

function arc(from_deg: number, to_deg: number, radius: number): string {
  const [x1, y1] = place(from_deg, radius)
  const [x2, y2] = place(to_deg, radius)
  return `M${x1.toFixed(2)} ${y1.toFixed(2)}A${radius} ${radius} 0 ${to_deg - from_deg > 180 ? 1 : 0} 1 ${x2.toFixed(2)} ${y2.toFixed(2)}`
}

/** A gauge: a plain open arc with round numbers, a needle, and its reading in figures below. */
export function Dial({ name, part, marks, zero_deg, units }: DialProps) {
  const [zx, zy] = place(zero_deg, 37)
  return (
    <figure className={styles.dial} aria-label={name}>
      <svg viewBox="0 0 120 104" aria-hidden="true" className={styles.face}>
        <path d={arc(-120, 120, 46)} className={styles.arc} />
        {units[1] !== undefined && <path d={arc(-120, 0, 46)} className={styles.vacuum} />}
        {marks.map(({ at, label, angle_deg }) => {
          const [x1, y1] = place(angle_deg, 46)
          const [x2, y2] = place(angle_deg, 40)
          const [tx, ty] = place(angle_deg, 30)
          return (
            <g key={`${angle_deg}-${at}`}>
              <line x1={x1} y1={y1} x2={x2} y2={y2} className={styles.tick} />
              <text x={tx} y={ty + 3} className={styles.label}>{label}</text>
            </g>
          )
        })}
        <circle cx={zx} cy={zy} r={2} className={styles.zero} />
        {units.map((unit, index) => <text key={index === 0 ? 'left' : 'right'} x={units.length === 1 ? 60 : index === 0 ? 46 : 76} y={units.length === 1 ? 82 : 71} className={styles.side}>{unit}</text>)}
        <g data-part={`${part}-needle`} className={styles.needle}>
          <path d="M60 65L60 20" />
          <circle cx={60} cy={62} r={5} />
        </g>
      </svg>
      <figcaption className={styles.caption}>
        <output className={styles.reading} data-part={`${part}-reading`} aria-live="off" />
        <span className={styles.name}>{name}</span>
      </figcaption>
    </figure>
  )
}
