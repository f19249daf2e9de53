import type { Page } from '@playwright/test'
import { median } from './cost'

/** What a person does: each begins one wait, until the frame after it has been painted. */
const SIGNS = ['input', 'click', 'pointerup', 'keydown'] as const
export type Sign = (typeof SIGNS)[number]

/** Runs in the page from its start; as text, because the names that the compiler adds to functions are not known there. */
const watchInputs = `(() => {
  const waits = (window.millraceWaits = [])
  let watch
  const whenPainted = (tell) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = tell
    port2.postMessage(0)
  })
  for (const sign of ${JSON.stringify(SIGNS)}) addEventListener(sign, ({ timeStamp }) => {
    watch?.disconnect()
    const wait = { sign, at_ms: timeStamp }
    waits.push(wait)
    whenPainted(() => { wait.wait_ms = wait.follows_ms = performance.now() - timeStamp })
    watch = new MutationObserver(() => whenPainted(() => { wait.follows_ms = performance.now() - timeStamp }))
    watch.observe(document, { childList: true, characterData: true, subtree: true })
  }, { capture: true, passive: true })
})()`

/** Has every page of this window tell how long each input waits for its frame. */
export async function watchInputsOf(page: Page): Promise<void> {
  await page.addInitScript(watchInputs)
}

/** Input to paint of each act of a kind, [ms]: from the event as the browser took it to the end of the frame that comes next. */
export async function waitsOf(page: Page, sign: Sign, acts: readonly (() => Promise<unknown>)[]): Promise<number[]> {
  return (await waitsAndFollows(page, sign, acts)).waits
}

/** The page stands still for so long when all that an input set off is there, [ms]. */
const STILL_MS = 250

/** The same, and beside it how long until the last thing that follows from each act, such as its list, has been painted. */
export async function waitsAndFollows(page: Page, sign: Sign, acts: readonly (() => Promise<unknown>)[]): Promise<{ waits: number[]; follows: number[] }> {
  const [waits, follows]: [number[], number[]] = [[], []]
  for (const act of acts) {
    await page.evaluate('void (millraceWaits.length = 0)')
    await act()
    const last = `millraceWaits.filter(({ sign }) => sign === '${sign}').at(-1)`
    await page.waitForFunction(`performance.now() - ${last}?.at_ms - ${last}?.follows_ms > ${STILL_MS}`)
    const { wait_ms, follows_ms } = await page.evaluate<{ wait_ms: number; follows_ms: number }>(last)
    waits.push(wait_ms)
    follows.push(follows_ms)
  }
  return { waits, follows }
}

/** Every letter of a word, a key at a time. */
export const lettersOf = (page: Page, word: string): (() => Promise<void>)[] => [...word].map((letter) => () => page.keyboard.press(letter))

/**
 * From a key or click until the page shows something, [ms].
 *
 * @param isShown expression in the page that is true from then on
 */
export async function shownAfter(page: Page, sign: Sign, act: () => Promise<unknown>, isShown: string): Promise<number> {
  await page.evaluate(`void (window.millraceShown = new Promise((resolve) => addEventListener('${sign}', ({ timeStamp }) => {
    const look = () => requestAnimationFrame(() => ((${isShown}) ? resolve(performance.now() - timeStamp) : look()))
    look()
  }, { capture: true, once: true })))`)
  await act()
  return page.evaluate<number>('millraceShown')
}

/** From asking for a page until it shows something, [ms]: the middle of some times. */
export async function opened(page: Page, address: string, isShown: string, times = 3): Promise<number> {
  const found: number[] = []
  for (let turn = 0; turn < times; turn++) {
    await page.goto(address, { waitUntil: 'commit' })
    found.push(await page.evaluate<number>(`new Promise((resolve) => { const look = () => requestAnimationFrame(() => ((${isShown}) ? resolve(performance.now()) : look())); look() })`))
  }
  return median(found)
}
