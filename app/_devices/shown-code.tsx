import { formatMoment, say } from '../_text'
import '../_text/areas/devices'
import shared from '../_look/shared.module.css'
import styles from './devices.module.css'
import { QrCode } from './qr-code'

export type MadeCode = { code: string; expiresAt: string }

/** A code to be typed or scanned; shown only once. */
export function ShownCode({ base, made, title = say('devices.code') }: { base: string; made: MadeCode; title?: string }) {
  return (
    <div className={styles.code}>
      <QrCode text={`${base}/join#${made.code}`} label={say('devices.code.qr')} />
      <div className={styles.beside}>
        <h3 className={styles.small}>{title}</h3>
        <p className={styles.letters}><span aria-hidden="true">{made.code}</span><span className={shared.heard}>{say('devices.code.spelled', { letters: made.code.replace('-', '').split('').join(' ') })}</span></p>
        <p className={styles.address}>{`${base}/join`}</p>
        <p className={styles.quiet}>{say('devices.code.until', { time: formatMoment(Date.parse(made.expiresAt)) })}</p>
      </div>
    </div>
  )
}
