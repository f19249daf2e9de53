import { expect, it } from 'vitest'
import { nameLines } from '@/app/_map/name-lines'

it('a short name stays on one line', () => {
  expect(nameLines('Mill Yard')).toEqual(['Mill Yard'])
  expect(nameLines('')).toEqual([''])
})

it('a long one is broken between words into lines about alike', () => {
  expect(nameLines('Covered Bridge, north abutment')).toEqual(['Covered Bridge,', 'north abutment'])
  expect(nameLines('Station 7, Fallow Gap (mutual aid)')).toEqual(['Station 7, Fallow', 'Gap (mutual aid)'])
})

it('nothing of it is lost, and no word is broken', () => {
  for (const name of ['Fire protection district of the upper valley and its hamlets', 'Feuerwehrgerätehaus-Löschwasserentnahmestelle', 'a b c d e f g h i j k l m n o p q r s t u v']) {
    expect(nameLines(name).join(' ')).toBe(name)
  }
})
