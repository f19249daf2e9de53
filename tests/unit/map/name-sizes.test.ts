import { expect, test } from 'vitest'
import { NameSizes } from '@/app/_map/leaflet/name-sizes'

/** The face of a site as the browser would lay it out; counts how often that is asked for. */
function faceOf(width: number): { face: HTMLElement; asked: () => number } {
  let count = 0
  const name = { get offsetWidth() { count++; return width }, offsetHeight: 14 }
  return { face: { querySelector: () => name } as unknown as HTMLElement, asked: () => count }
}

test('a name is measured once, whatever becomes of the other sites', () => {
  const sizes = new NameSizes()
  const first = faceOf(80)
  expect(sizes.sizeOf({ name: 'Mill pond' }, first.face)).toEqual({ width: 80, height: 14 })
  const asked = first.asked()
  expect(sizes.sizeOf({ name: 'Mill pond' }, first.face)).toEqual({ width: 80, height: 14 })
  expect(first.asked()).toBe(asked)
})

test('with something else to say of it, marked, or in another typeface it is measured anew', () => {
  const sizes = new NameSizes()
  sizes.sizeOf({ name: 'Mill pond' }, faceOf(80).face)
  expect(sizes.sizeOf({ name: 'Mill pond', note: 'fills at 500 gpm' }, faceOf(120).face).width).toBe(120)
  expect(sizes.sizeOf({ name: 'Mill pond', isMarked: true }, faceOf(90).face).width).toBe(90)
  sizes.forget()
  expect(sizes.sizeOf({ name: 'Mill pond' }, faceOf(84).face).width).toBe(84)
})

test('a name that is not drawn yet, or not shown, is measured when it is', () => {
  const sizes = new NameSizes()
  expect(sizes.sizeOf({ name: 'Mill pond' }, { querySelector: () => null } as unknown as HTMLElement).width).toBe(0)
  expect(sizes.sizeOf({ name: 'Mill pond' }, faceOf(0).face).width).toBe(0)
  expect(sizes.sizeOf({ name: 'Mill pond' }, faceOf(80).face).width).toBe(80)
})
