import type { Finding, Remedy } from '@/lib/priming/drill'
import { inchesOfMercuryFromFeetOfWater } from '@/lib/units'
import { formatClock, formatQuantity, formatShare, isTextKey, say, type UnitSystem } from '../_text'
import '../_text/areas/drill'
import { leverFromOpening } from './lever'
import styles from './finding-item.module.css'

/** Position of a control as the hand saw it, in per cent; the switches by name. */
export function positionWords(control: Remedy['control'], opening: number): string {
  if (control === 'primer') return opening > 0 ? say('drill.on') : say('drill.off')
  if (control === 'drain') return opening > 0 ? say('drill.opened') : say('drill.shut')
  return formatShare(Math.round(leverFromOpening(control, opening) * 100) / 100)
}

/** A trouble, its cause by trial, and what would have helped. */
export function FindingItem({ finding, system }: { finding: Finding; system: UnitSystem }) {
  const { event, cause, remedies } = finding
  const { values } = event
  const shown = (field: string, unit: 'psi' | 'ft' | 'gpm' | 'degF'): string => formatQuantity(values[field], unit, system)
  const key = `drill.event.${event.code}.text`
  const text = isTextKey(key)
    ? say(key, { discharge: shown('discharge_psi', 'psi'), vacuum: vacuumWords(values.eyeVacuum_ft, system), lift: shown('lift_ft', 'ft'), needed: vacuumWords(values.lift_ft, system),
      flow: shown('delivered_gpm', 'gpm'), warm: warming(values.warm_degF ?? 0, system) })
    : ''
  return (
    <li className={styles.finding}>
      <h4 className={styles.head}><span>{say(`drill.event.${event.code}`)}</span> <span className={styles.time}>{formatClock(event.at_s)}</span></h4>
      <p>{text}</p>
      {cause && (
        <p>
          {say('drill.finding.cause', { control: say(`drill.control.${cause.movement.control}`), from: positionWords(cause.movement.control, cause.movement.from),
            to: positionWords(cause.movement.control, cause.movement.to), time: formatClock(cause.movement.start_s) })}
          {' '}
          {say('drill.finding.without', { discharge: formatQuantity(cause.withoutIt.discharge_psi, 'psi', system), gas: formatShare(Math.round((cause.withoutIt.gasShare ?? 0) * 100) / 100) })}
        </p>
      )}
      {!cause && <p>{say('drill.finding.no-cause')}</p>}
      {remedies.length > 0 && (
        <ul className={styles.remedies}>
          {remedies.map((remedy) => <li key={`${remedy.control}${remedy.at}`} data-averts={remedy.averts}>{remedyWords(event.code === 'vacuum-short', remedy, system)}</li>)}
        </ul>
      )}
    </li>
  )
}

function remedyWords(isAboutVacuum: boolean, { control, at, averts, values }: Remedy, system: UnitSystem): string {
  const words = { control: say(`drill.control.${control}`), position: isSwitch(control) ? positionWords(control, at) : say('drill.at', { share: positionWords(control, at) }) }
  if (!isAboutVacuum) return say(averts ? 'drill.finding.averts' : 'drill.finding.not-averts', words)
  const vacuum = vacuumWords(values.eyeVacuum_ft, system)
  return say(averts ? 'drill.finding.lifts' : 'drill.finding.not-lifts', { ...words, vacuum })
}

/** Feet of water as a gauge shows them; a lift takes as much vacuum as it is high. */
const vacuumWords = (head_ft: number | undefined, system: UnitSystem): string => formatQuantity(inchesOfMercuryFromFeetOfWater(Math.max(0, head_ft ?? 0)), 'inHg', system)

const isSwitch = (control: Remedy['control']): boolean => control === 'primer' || control === 'drain'

/** A difference of temperature: the scale counts, its zero does not. */
const warming = (warm_degF: number, system: UnitSystem): string =>
  system === 'us' ? formatQuantity(warm_degF, 'degF', system, { digits: 0 }) : formatQuantity(32 + warm_degF, 'degF', system, { digits: 0 })
