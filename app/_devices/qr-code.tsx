import { create } from 'qrcode'
import styles from './devices.module.css'

const QUIET = 4

/** A text as a square code, dark on light whatever the theme: cameras want it so. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules
  const path = Array.from(data, (isDark, at) => (isDark ? `M${(at % size) + QUIET} ${Math.floor(at / size) + QUIET}h1v1h-1z` : '')).join('')
  const whole = size + 2 * QUIET
  return (
    <svg className={styles.qr} viewBox={`0 0 ${whole} ${whole}`} role="img" aria-label={label} shapeRendering="crispEdges">
      <rect width={whole} height={whole} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  )
}
