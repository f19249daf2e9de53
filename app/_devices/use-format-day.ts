'use client'

import { useSyncExternalStore } from 'react'
import { formatDay } from '../_text'

const never = () => () => undefined
const inUtc = (iso: string): string => formatDay(iso.slice(0, 10))

/**
 * Writes moments as the day they were where the reader is, on a page that the server makes first: it does not know
 * where that is, so the page as it comes says the day in UTC, and the reader's own once it is drawn there.
 */
export const useFormatDay = (): ((iso: string) => string) => useSyncExternalStore(never, () => formatDay, () => inUtc)
