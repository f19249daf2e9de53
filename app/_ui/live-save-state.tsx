'use client'

import { useSaveState } from '../_client'
import { SaveState } from './save-state'

/** Whether this window's changes are kept, as it stands now. */
export function LiveSaveState() {
  const { state, unsentCount } = useSaveState()
  return <SaveState state={state} unsentCount={unsentCount} />
}
