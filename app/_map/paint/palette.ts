/**
 * Colours of the drawn map, mixed from the tokens of the look, so that day, night, bright
 * sun and paper each bring their own. Blue is water here as everywhere.
 */
const mixes = {
  ground: 'var(--paper)',
  beyond: 'var(--sunk)',
  waterFill: 'color-mix(in srgb, var(--water) 24%, var(--paper))',
  waterEdge: 'color-mix(in srgb, var(--water) 62%, var(--paper))',
  building: 'color-mix(in srgb, var(--line-strong) 34%, var(--paper))',
  roadMain: 'color-mix(in srgb, var(--line-strong) 42%, var(--sheet))',
  road: 'color-mix(in srgb, var(--line-strong) 16%, var(--sheet))',
  casing: 'color-mix(in srgb, var(--line-strong) 78%, var(--paper))',
  track: 'color-mix(in srgb, var(--line-strong) 72%, var(--paper))',
  contour: 'color-mix(in srgb, var(--line-strong) 46%, var(--paper))',
  graticule: 'var(--line)',
  label: 'var(--ink-quiet)',
  labelStrong: 'var(--ink)',
  labelWater: 'var(--water)',
  halo: 'var(--paper)',
  loaded: 'var(--water)',
  empty: 'var(--ink)',
  routeHalo: 'var(--sheet)',
  chosen: 'var(--amber-solid)',
} as const

export type Palette = Readonly<Record<keyof typeof mixes, string>> & { readonly font: string; readonly isBold: boolean }

/** Reads the colours as they come out on this element now. */
export function readPalette(element: HTMLElement): Palette {
  const probe = element.ownerDocument.createElement('span')
  probe.hidden = true
  element.append(probe)
  const colours = Object.entries(mixes).map(([name, mix]) => {
    probe.style.color = mix
    return [name, getComputedStyle(probe).color] as const
  })
  const { fontFamily, fontWeight } = getComputedStyle(probe)
  probe.remove()
  return { ...(Object.fromEntries(colours) as Record<keyof typeof mixes, string>), font: fontFamily, isBold: Number(fontWeight) >= 500 }
}

/** Calls back when the colours may have changed: another theme chosen, the device gone dark, paper. */
export function watchPalette(changed: () => void): () => void {
  const observer = new MutationObserver(changed)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  const queries = ['(prefers-color-scheme: dark)', 'print'].map((query) => matchMedia(query))
  for (const query of queries) query.addEventListener('change', changed)
  return () => {
    observer.disconnect()
    for (const query of queries) query.removeEventListener('change', changed)
  }
}
