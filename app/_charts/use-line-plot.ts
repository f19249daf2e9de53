'use client'

import { useEffect, useRef, type RefObject } from 'react'
import type uPlot from 'uplot'
import { useTheme } from '../_ui/theme-context'

/** Colours and type of a chart as the page around it has them now. */
export function plotLook(element: HTMLElement): { colour: (token: string) => string; font: string; axis: uPlot.Axis } {
  const look = getComputedStyle(element)
  const colour = (token: string): string => look.getPropertyValue(token).trim()
  const font = `12px ${look.fontFamily}`
  return { colour, font, axis: { stroke: colour('--ink-quiet'), grid: { stroke: colour('--line'), width: 1 }, ticks: { stroke: colour('--line') }, font, labelFont: font } }
}

export const DARK = '(prefers-color-scheme: dark)'

/**
 * Keeps a chart in an element: drawn anew for another theme and when a media query turns, fitted to another width.
 *
 * @param make     draws it; the same function until what it shows changes
 * @param height   in px
 * @param wishes   media queries, a list that does not change
 */
export function useLinePlot(make: (element: HTMLElement) => uPlot, height: number, wishes: readonly string[]): RefObject<HTMLDivElement | null> {
  const holder = useRef<HTMLDivElement>(null)
  const [theme] = useTheme()
  useEffect(() => {
    const element = holder.current
    if (!element) return
    let plot: uPlot | undefined
    const draw = (): void => {
      plot?.destroy()
      plot = make(element)
    }
    draw()
    const queries = wishes.map((query) => window.matchMedia(query))
    for (const query of queries) query.addEventListener('change', draw)
    const observer = new ResizeObserver(() => { plot?.setSize({ width: element.clientWidth, height }) })
    observer.observe(element)
    return () => {
      observer.disconnect()
      for (const query of queries) query.removeEventListener('change', draw)
      plot?.destroy()
    }
  }, [make, height, wishes, theme])
  return holder
}
