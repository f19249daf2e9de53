import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { findPage, keptAddress, pages, withIds } from '@/app/_shell/pages'

/** Pages that only the station's own machine needs, and those that only lead on to another. */
const isKept = (file: string) => !/redirect\(|kept: never/.test(readFileSync(file, 'utf8'))

it('knows every page there is: a new one works with the station out of reach, or says why not', () => {
  const app = path.resolve('app')
  const found = readdirSync(app, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.name === 'page.tsx' && isKept(path.join(entry.parentPath, entry.name)))
    .map((entry) => `/${path.relative(app, entry.parentPath).split(path.sep).join('/')}`)
  expect([...pages].sort()).toEqual(found.sort())
})

it('finds the page of an address, with its ids', () => {
  expect(findPage('/')).toEqual({ page: '/', ids: {} })
  expect(findPage('/district/d-1/plan/p_2/doubt')).toEqual({ page: '/district/[districtId]/plan/[planId]/doubt', ids: { districtId: 'd-1', planId: 'p_2' } })
  expect(findPage('/district/d-1/plan/')).toEqual({ page: '/district/[districtId]/plan', ids: { districtId: 'd-1' } })
  expect(findPage('/nowhere')).toBeUndefined()
})

it('takes nothing for an id that could mean more than one in a page', () => {
  for (const id of ['<b>', '"', "'", '%3Cscript%3E', '\\', '', 'a'.repeat(65)]) expect(findPage(`/district/${id}/plan`)).toBeUndefined()
})

it('puts the ids asked for in the place of those in the kept copy', () => {
  const page = '/district/[districtId]/plan/[planId]'
  const html = `<a href="${keptAddress(page)}"></a>`
  expect(withIds(html, findPage('/district/d/plan/p')!.ids)).toBe('<a href="/district/d/plan/p"></a>')
})
