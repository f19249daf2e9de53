import { formatNumber, say } from '../_text'

const MEGABYTE = 1_000_000

/** A size on a disk: megabytes, or gigabytes from a thousand of them. */
export function formatBytes(size_bytes: number): string {
  const size = size_bytes / MEGABYTE
  return size >= 1000 ? say('device.gigabytes', { size: formatNumber(size / 1000, 1) }) : say('device.megabytes', { size: formatNumber(size, size < 10 ? 1 : 0) })
}
