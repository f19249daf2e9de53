import { isFull } from './backup-names.mjs'
import { isBackupDue, makeBackup } from './backups.mjs'

const CHECK_ms = 30 * 60 * 1000

/**
 * Makes a backup now if the newest is a day old, and looks again every half hour. Trouble is said once and kept for the
 * pages to show; it never reaches whoever is served.
 *
 * @param options.say    takes the sentence for the log
 * @param options.isDue  and options.make: the ones of backups.mjs unless a test brings others
 * @returns state for the pages, how to look at once, and how to stop
 */
export function startBackups(file, { say, isDue = isBackupDue, make = makeBackup, check_ms = CHECK_ms } = {}) {
  const state = { trouble: undefined }
  let running
  const look = async () => {
    try {
      if (await isDue(file)) await make(file)
      state.trouble = undefined
    } catch (error) {
      const reason = String(error?.message ?? error)
      if (state.trouble?.reason !== reason) say(sentenceOf(reason))
      state.trouble = { isFull: isFull(reason), reason }
    }
  }
  const lookOnce = () => (running ??= look().finally(() => (running = undefined)))
  const timer = setInterval(() => void lookOnce(), check_ms)
  timer.unref()
  void lookOnce()
  return { state, look: lookOnce, stop: () => clearInterval(timer) }
}

const sentenceOf = (reason) =>
  isFull(reason)
    ? 'The daily backup of the database could not be written: the disk is full. Free some space; it is tried again every half hour.'
    : `The daily backup of the database could not be written (${reason}); it is tried again every half hour.`
