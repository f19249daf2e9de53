'use client'

import Link from 'next/link'
import { useSaveState } from '../_client'
import { useKeptDistrict } from '../_shell/use-kept-district'
import { say } from '../_text'
import { SaveState } from '../_ui/save-state'
import styles from './live-save-state.module.css'

/** Whether this window's changes are kept, and where; leads to what this device has. Keeps the open district here meanwhile. */
export function LiveSaveState({ districtId }: { districtId: string }) {
  const { state, unsentCount, conflictCount } = useSaveState()
  useKeptDistrict(districtId)
  return (
    <Link href="/device" className={styles.link} aria-label={say('shell.save.link')} prefetch={false}>
      <SaveState state={state} count={state === 'unsettled' ? conflictCount : unsentCount} />
    </Link>
  )
}
