import { useId } from 'react'
import { say } from '../_text'
import '../_text/areas/drill'
import styles from './panel-picture.module.css'

/** From the strainer to the intake valve. */
const HOSE = 'M46 194C96 196 104 120 170 120'
const TANK = { x: 176, y: 14, width: 154, height: 54 } as const
const PUMP = { x: 222, y: 120, radius: 26 } as const
/** Bubbles in the pump, placed by the golden angle so that they never line up. */
const bubbles = Array.from({ length: 16 }, (_, index) => {
  const angle = index * 2.39996
  const radius = 22 * Math.sqrt((index + 0.5) / 16)
  return { x: PUMP.x + radius * Math.cos(angle), y: PUMP.y + radius * Math.sin(angle) }
})
const pipes = ['M168 120H198', 'M222 66V98', 'M246 120H390', 'M300 120V24'] as const
const valves = [
  { control: 'intake', x: 182, y: 120, isUpright: false },
  { control: 'tankToPump', x: 222, y: 81, isUpright: true },
  { control: 'tankFill', x: 300, y: 90, isUpright: true },
  { control: 'discharge', x: 344, y: 120, isUpright: false },
] as const

/** Source, suction, pump and tank loop, drawn plain. What moves is marked by `data-part` and painted by `paint-picture`. */
export function PanelPicture() {
  const id = useId()
  return (
    <svg viewBox="0 8 400 204" className={styles.picture} role="img" aria-label={say('drill.picture')}>
      <defs>
        <clipPath id={`${id}-pump`}><circle cx={PUMP.x} cy={PUMP.y} r={PUMP.radius - 1.5} /></clipPath>
        <clipPath id={`${id}-tank`}><rect x={TANK.x} y={TANK.y} width={TANK.width} height={TANK.height} rx={4} /></clipPath>
      </defs>
      <rect x={0} y={170} width={150} height={44} className={styles.source} data-part="source" />
      <path d="M-2 206H124L158 158H402V214H-2Z" className={styles.ground} />
      <g className={styles.whirl} data-part="whirl"><path d="M34 172Q46 180 58 172M38 178Q46 184 54 178M42 184Q46 187 50 184" /></g>
      <g className={styles.lift}>
        <path d="M12 170V122M4 122H168" />
        <text x={17} y={150} data-part="lift" />
      </g>

      <path d={HOSE} className={styles.hose} />
      <path d={HOSE} className={styles.hoseInside} />
      <g data-inside="">
        <path d={HOSE} className={styles.hoseAir} data-part="hose-air" />
        <path d={HOSE} className={styles.hoseWater} pathLength={100} data-part="hose-water" />
        <path d={HOSE} className={styles.flow} data-part="hose-flow" />
      </g>
      <rect x={36} y={188} width={20} height={12} rx={3} className={styles.strainer} />

      {pipes.map((path) => <path key={path} d={path} className={styles.pipe} />)}
      {pipes.map((path) => <path key={path} d={path} className={styles.pipeInside} />)}
      <rect {...TANK} rx={4} className={styles.tank} />
      <g clipPath={`url(#${id}-tank)`}><rect x={TANK.x} y={TANK.y} width={TANK.width} height={TANK.height} className={styles.water} data-part="tank" /></g>
      <path d="M300 68V26" className={styles.standPipe} />
      {[0.25, 0.5, 0.75].map((share) => <path key={share} d={`M${TANK.x} ${TANK.y + TANK.height * (1 - share)}h${share === 0.5 ? 14 : 8}`} className={styles.mark} />)}
      <path d="M332 16q12 4 10 22M332 24q8 4 6 16" className={styles.overflow} data-part="overflow" />
      <path d="M170 120H196" className={styles.stream} data-part="intake-flow" />
      <path d="M222 68V96" className={styles.stream} data-part="tankToPump-flow" />
      <path d="M248 120H300V26" className={styles.stream} data-part="tankFill-flow" />
      <path d="M248 120H398" className={styles.stream} data-part="discharge-flow" />

      <circle cx={PUMP.x} cy={PUMP.y} r={PUMP.radius} className={styles.pump} />
      <g clipPath={`url(#${id}-pump)`} data-inside="">
        <rect x={PUMP.x - PUMP.radius} y={PUMP.y - PUMP.radius} width={2 * PUMP.radius} height={2 * PUMP.radius} className={styles.water} data-part="pump" />
        <g data-part="bubbles">{bubbles.map(({ x, y }) => <circle key={`${x}`} cx={x} cy={y} r={2.6} className={styles.bubble} />)}</g>
      </g>
      <path d={`M${PUMP.x} ${PUMP.y - 16}V${PUMP.y + 16}M${PUMP.x - 16} ${PUMP.y}H${PUMP.x + 16}`} className={styles.impeller} data-part="impeller" />

      {valves.map(({ control, x, y, isUpright }) => (
        <g key={control} transform={`translate(${x} ${y})`}>
          <circle r={10} className={styles.valve} />
          <path d="M-10 0H10" className={styles.gate} data-part={`${control}-gate`} data-upright={isUpright} />
          <text x={isUpright ? 17 : 0} y={isUpright ? 4 : 23} className={styles.letter}>{say(`drill.control.letter.${control}`)}</text>
        </g>
      ))}
      <text x={TANK.x - 8} y={TANK.y + 31} className={styles.tankText} data-part="tank-text" />
    </svg>
  )
}
