'use client'

import { createContext, use, useCallback, useEffect, useMemo, useState } from 'react'
import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import { Button } from './button'
import styles from './toast.module.css'

export type Toast = {
  readonly text: string
  /** Takes back what the line tells of. */
  readonly onUndo?: () => void
  readonly look?: 'plain' | 'danger'
}

const ToastContext = createContext<((toast: Toast | undefined) => void) | undefined>(undefined)

/** A line that undoes stays this long; one that tells of a failure stays until it is closed. */
const STAY_MS = 15_000

/** Shows one line at the foot of the screen: what was just done, with the way back. A new line replaces the last. */
export function ToastProvider({ children }: { children: ReactNode }) {
  const [toast, setToast] = useState<Toast>()
  const [isHeld, setHeld] = useState(false)
  const show = useCallback((next: Toast | undefined) => { setToast(next) }, [])

  useEffect(() => {
    if (!toast || isHeld || toast.look === 'danger') return
    const timer = setTimeout(() => { setToast(undefined) }, STAY_MS)
    return () => { clearTimeout(timer) }
  }, [toast, isHeld])

  const context = useMemo(() => show, [show])
  const hold = { onMouseEnter: () => { setHeld(true) }, onMouseLeave: () => { setHeld(false) }, onFocus: () => { setHeld(true) }, onBlur: () => { setHeld(false) } }
  return (
    <ToastContext value={context}>
      {children}
      <div className={styles.region} role="status" aria-live="polite">
        {toast && (
          <div className={toast.look === 'danger' ? styles.danger : styles.line} {...hold}>
            {toast.look === 'danger' && <Icon name="warn" />}
            <span className={styles.text}>{toast.text}</span>
            {toast.onUndo && <Button size="s" look="quiet" className={styles.action} icon="undo" label={say('kit.undo')} onClick={() => { toast.onUndo?.(); setToast(undefined); setHeld(false) }} />}
            <Button size="s" look="quiet" className={styles.action} icon="close" label={say('kit.close')} onClick={() => { setToast(undefined); setHeld(false) }} />
          </div>
        )}
      </div>
    </ToastContext>
  )
}

/** Shows a line, or with undefined takes it away. */
export function useToast(): (toast: Toast | undefined) => void {
  const show = use(ToastContext)
  if (!show) throw new Error('useToast stands outside ToastProvider')
  return show
}
