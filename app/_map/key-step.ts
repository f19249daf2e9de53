/** Pixels a site moves by one press of an arrow key, and with Shift. */
const STEP_PX = 4
const LARGE_STEP_PX = 40

const directions: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }

/** How far a key moves a site on the screen, or undefined when it is no arrow key or belongs to the browser. */
export function findKeyStep({ key, shiftKey, altKey, ctrlKey, metaKey }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>): [number, number] | undefined {
  const direction = directions[key]
  if (!direction || altKey || ctrlKey || metaKey) return undefined
  const step = shiftKey ? LARGE_STEP_PX : STEP_PX
  return [direction[0] * step, direction[1] * step]
}
