/**
 * Every page of the app, as its folder names it. None of them holds data: a page is the same for every
 * district and plan but for the ids it was asked for, so one kept copy of each serves all of them with
 * the station out of reach.
 */
export const pages = [
  '/',
  '/device',
  '/drill',
  '/help',
  '/district/[districtId]/survey',
  '/district/[districtId]/resources',
  '/district/[districtId]/drill',
  '/district/[districtId]/book',
  '/district/[districtId]/compare',
  '/district/[districtId]/exchange',
  '/district/[districtId]/exercise',
  '/district/[districtId]/exercise/[exerciseId]',
  '/district/[districtId]/exercise/[exerciseId]/debrief',
  '/district/[districtId]/log',
  '/district/[districtId]/log/reviews',
  '/district/[districtId]/log/[logId]',
  '/district/[districtId]/log/[logId]/form',
  '/district/[districtId]/log/[logId]/paper',
  '/district/[districtId]/log/[logId]/review',
  '/district/[districtId]/draft/[draftSiteId]',
  '/district/[districtId]/draft/[draftSiteId]/card',
  '/district/[districtId]/plan',
  '/district/[districtId]/plan/[planId]',
  '/district/[districtId]/plan/[planId]/advice',
  '/district/[districtId]/plan/[planId]/doubt',
  '/district/[districtId]/plan/[planId]/handbook',
  '/district/[districtId]/plan/[planId]/hose',
  '/district/[districtId]/plan/[planId]/request',
] as const
export type Page = (typeof pages)[number]

/** Ids as this app mints them, and nothing that could mean more in a page than an id. */
const ID = /^[\w-]{1,64}$/
const NAME = /^\[(\w+)\]$/

/** Stands for an id in the copy that is kept. */
const standIn = (name: string): string => `any-${name}-any`

/** Address of the copy that is kept of a page. */
export const keptAddress = (page: Page): string => page.split('/').map((part) => part.replace(NAME, (_, name: string) => standIn(name))).join('/')

export type AskedPage = { page: Page; ids: Readonly<Record<string, string>> }

/** The page that a path asks for, with its ids; undefined for any other path, or an id that is none of ours. */
export function findPage(path: string): AskedPage | undefined {
  const parts = path.length > 1 ? path.replace(/\/$/, '').split('/') : ['', '']
  for (const page of pages) {
    const wanted = page.split('/')
    if (wanted.length !== parts.length) continue
    const ids: Record<string, string> = {}
    const isMatch = wanted.every((part, i) => {
      const [, name] = NAME.exec(part) ?? []
      if (name === undefined) return part === parts[i]
      ids[name] = parts[i] ?? ''
      return ID.test(ids[name])
    })
    if (isMatch) return { page, ids }
  }
  return undefined
}

/** The kept copy as the page that was asked for. */
export const withIds = (html: string, ids: AskedPage['ids']): string =>
  Object.entries(ids).reduce((text, [name, id]) => text.replaceAll(standIn(name), id), html)
