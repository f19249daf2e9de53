import { useLayoutEffect, useRef, useState } from 'react'

/** What a field gives up on being left stays in its place so long, that a press begun on something below it still ends there. */
const STAY_MS = 400

/** True while `isOn`, and a moment longer. */
export function useLinger(isOn: boolean): boolean {
  const [lingers, setLingers] = useState(false)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  useLayoutEffect(() => {
    if (!isOn) return
    clearTimeout(timer.current)
    return () => {
      setLingers(true)
      timer.current = setTimeout(() => { setLingers(false) }, STAY_MS)
    }
  }, [isOn])
  return isOn || lingers
}
