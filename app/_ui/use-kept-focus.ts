'use client'

import { useEffect } from 'react'

/** One step up from the element that has the keyboard, and what stood beside it. */
type Step = { readonly parent: Element; readonly next: Element | null; readonly previous: Element | null }

const CAN_FOCUS = 'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex]:not([tabindex="-1"])'
/** Whoever took the element away may have a better place in mind, and puts the keyboard there first. */
const PATIENCE_MS = 150

/**
 * Where the keyboard goes on when what had it is taken away, such as a card with its own button to delete it: at what
 * stood after it, else before it, else at what they stood in. A list is then gone through without starting at the top.
 */
export function useKeptFocus(): void {
  useEffect(() => {
    let held: Element | undefined
    let way: readonly Step[] = []
    let timer: ReturnType<typeof setTimeout> | undefined
    const remember = ({ target }: FocusEvent) => {
      if (!(target instanceof Element)) return
      held = target
      way = wayUp(target)
    }
    const goOn = () => {
      if (document.activeElement !== document.body || !held || held.isConnected) return
      nextPlace(way)?.focus({ preventScroll: true })
      held = undefined
    }
    const watch = new MutationObserver(() => {
      if (!held || held.isConnected) return
      clearTimeout(timer)
      timer = setTimeout(goOn, PATIENCE_MS)
    })
    document.addEventListener('focusin', remember)
    watch.observe(document.body, { childList: true, subtree: true })
    return () => {
      clearTimeout(timer)
      watch.disconnect()
      document.removeEventListener('focusin', remember)
    }
  }, [])
}

function wayUp(from: Element): Step[] {
  const way: Step[] = []
  for (let one = from; one.parentElement && one !== document.body; one = one.parentElement) {
    way.push({ parent: one.parentElement, next: one.nextElementSibling, previous: one.previousElementSibling })
  }
  return way
}

/** The nearest place to go on from inside the screen's content; what floats above it gives the keyboard back by itself. */
function nextPlace(way: readonly Step[]): HTMLElement | undefined {
  const step = way.find(({ parent }) => parent.isConnected)
  if (!step?.parent.closest('main')) return undefined
  const inside = (element: Element | null) => (element?.isConnected ? [element, ...element.querySelectorAll(CAN_FOCUS)].find((one): one is HTMLElement => one instanceof HTMLElement && one.matches(CAN_FOCUS) && one.checkVisibility()) : undefined)
  const place = inside(step.next) ?? inside(step.previous) ?? inside(step.parent)
  if (place) return place
  return way.map(({ parent }) => inside(parent.isConnected ? parent : null)).find((found) => found !== undefined)
}
