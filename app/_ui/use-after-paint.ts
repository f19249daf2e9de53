'use client'

import { startTransition, useCallback, useEffect, useRef } from 'react'

/**
 * Does something once what was done before it is on the screen: the letter first, then the list that it is looked for in.
 * React alone would often still draw both before the browser has shown the first. Of those that wait only the newest is
 * done, and none when the screen is left.
 */
export function useAfterPaint(): (act: () => void) => void {
  const cancel = useRef<() => void>(undefined)
  useEffect(() => () => cancel.current?.(), [])
  return useCallback((act) => {
    cancel.current?.()
    cancel.current = afterPaint(() => { startTransition(act) })
  }, [])
}

/** Between drawing a frame and the next task the browser paints it. @returns how to call it off */
function afterPaint(act: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  const frame = requestAnimationFrame(() => { timer = setTimeout(act, 0) })
  return () => {
    cancelAnimationFrame(frame)
    clearTimeout(timer)
  }
}
