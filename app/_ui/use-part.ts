'use client'

import { useCallback, useState, type ComponentType } from 'react'

/**
 * A part of a screen whose script comes when it is first asked for, and not with the page.
 *
 * @param load brings it: a function of the module, not one made while rendering
 * @returns the part once it is there, and how to ask for it; where it does not come, asking again tries again
 */
export function usePart<P>(load: () => Promise<ComponentType<P>>): readonly [part: ComponentType<P> | undefined, ask: () => void] {
  const [held, setHeld] = useState<{ readonly part: ComponentType<P> }>()
  const ask = useCallback(() => { load().then((part) => { setHeld({ part }) }, () => undefined) }, [load])
  return [held?.part, ask]
}
