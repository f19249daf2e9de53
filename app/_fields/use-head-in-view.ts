'use client'

import { useEffect, useRef, type RefObject } from 'react'

/** Room for the bar above, and for the head of a card at the foot of the window. */
const ABOVE_PX = 40
const BELOW_PX = 160

/** Brings the head of a card into view when it opens, unless it is in view already. */
export function useHeadInView(isOpen: boolean): RefObject<HTMLDivElement | null> {
  const holder = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const element = holder.current
    if (!isOpen || !element) return
    const { top } = element.getBoundingClientRect()
    if (top < ABOVE_PX || top > window.innerHeight - BELOW_PX) element.scrollIntoView({ block: 'start' })
  }, [isOpen])
  return holder
}
