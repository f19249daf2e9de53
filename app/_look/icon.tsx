/** Strokes in a square of 16 by 16. Always beside words, never instead of them. */
const strokes = {
  add: 'M8 3v10M3 8h10',
  arrowLeft: 'M13 8H3M7 4L3 8l4 4',
  arrowRight: 'M3 8h10M9 4l4 4-4 4',
  block: 'M5.2 1.5h5.6l3.7 3.7v5.6l-3.7 3.7H5.2l-3.7-3.7V5.2zM5 8h6',
  check: 'M3 8.5l3.2 3.2L13 4.8',
  chevron: 'M4 6l4 4 4-4',
  close: 'M4 4l8 8M12 4l-8 8',
  display: 'M2 4h12M2 8h12M2 12h12M5 2.5v3M11 6.5v3M6.5 10.5v3',
  drill: 'M2.5 12.5a6 6 0 1 1 11 0M8 9.5l2.8-3.6M8 9.5h.01',
  edit: 'M3 13l.6-2.8L10.8 3 13 5.2l-7.2 7.2z',
  exercise: 'M8 2.2a5.8 5.8 0 1 1 0 11.6A5.8 5.8 0 1 1 8 2.2zM8 5v3.2l2.2 1.6M6.5 .8h3',
  home: 'M2.5 7.5L8 3l5.5 4.5V13h-11z',
  log: 'M3.5 2h9v12h-9zM6 5.2h4M6 8h4M6 10.8h2.5',
  move: 'M8 2v12M2 8h12M6.2 3.8L8 2l1.8 1.8M6.2 12.2L8 14l1.8-1.8M3.8 6.2L2 8l1.8 1.8M12.2 6.2L14 8l-1.8 1.8',
  note: 'M8 1.8a6.2 6.2 0 1 1 0 12.4A6.2 6.2 0 1 1 8 1.8zM8 7.3v3.9M8 4.8h.01',
  pause: 'M5 3v10M11 3v10',
  pick: 'M8 14s4.5-4.4 4.5-7.6a4.5 4.5 0 0 0-9 0C3.5 9.6 8 14 8 14zM8 6.5h.01',
  plan: 'M1.5 3.5L6 6.2h4L14.5 4.5M1.5 12.5L6 9.8h4l4.5 1.7',
  play: 'M4.5 2.8v10.4L13 8z',
  print: 'M4.5 6V2.5h7V6M4.5 11.5h-2V6h11v5.5h-2M4.5 9.5h7v4h-7z',
  resources: 'M1.5 11.5V5h7.5v6.5M9 7h3l2.5 2.3v2.2H1.5M4.5 13.3h.01M11.5 13.3h.01',
  search: 'M7 2.5a4.5 4.5 0 1 1 0 9a4.5 4.5 0 1 1 0-9zM10.3 10.3L14 14',
  survey: 'M2 12.5c2 0 2-1.5 4-1.5s2 1.5 4 1.5 2-1.5 4-1.5M8 8.5V2.5M5.5 5L8 2.5 10.5 5',
  trash: 'M3 4.5h10M6.5 4.5v-2h3v2M4.5 4.5l.6 9h5.8l.6-9',
  undo: 'M5.5 3L2.5 6l3 3M2.5 6h7a4 4 0 0 1 0 8H6',
  warn: 'M8 2l6.5 11.5h-13zM8 6.5v3.3M8 11.7h.01',
} as const

export type IconName = keyof typeof strokes

/** A small sign before or after words. */
export function Icon({ name, size = 16 }: { name: IconName; size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 16 16" fill="none" stroke="currentColor" strokeWidth={1.6} strokeLinecap="round" strokeLinejoin="round" aria-hidden="true">
      <path d={strokes[name]} />
    </svg>
  )
}
