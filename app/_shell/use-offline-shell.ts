'use client'

import { useSyncExternalStore } from 'react'
import { shellState, subscribeToShell, type ShellState } from './offline-shell'

/** How far this device could go without the station, as it stands now. */
export const useOfflineShell = (): ShellState => useSyncExternalStore(subscribeToShell, shellState, () => 'starting')
