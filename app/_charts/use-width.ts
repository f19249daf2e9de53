import { useEffect, useRef, useState } from 'react'

/** Width of an element in pixels, kept up to date. */
export function useWidth(): [React.RefObject<HTMLElement | null>, number] {
  const holder = useRef<HTMLElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    if (!holder.current) return
    const observer = new ResizeObserver(([entry]) => { setWidth(Math.floor(entry?.contentRect.width ?? 0)) })
    observer.observe(holder.current)
    return () => { observer.disconnect() }
  }, [])
  return [holder, width]
}
