import type { Equipment } from '@/lib/plan'
import { captain1, measured, nominal } from './evidence'

const tank = (id: string, carriedBy: string, capacity_gal: number, height_in?: number): Equipment => ({
  kind: 'portableTank', id, name: `${capacity_gal.toLocaleString('en-US')} gal portable tank`, carriedBy, capacity_gal, count: 1,
  ...(height_in !== undefined && { height_in }),
  evidence: { capacity_gal: nominal, ...(height_in !== undefined && { height_in: measured(captain1, '2025-08-16') }) },
})

const hose = (id: string, carriedBy: string, size_in: number, length_ft: number): Equipment => ({
  kind: 'hose', id, name: `${size_in} in hose, ${length_ft.toLocaleString('en-US')} ft`, carriedBy, size_in, length_ft, evidence: { size_in: nominal },
})

const suction = (id: string, carriedBy: string, size_in: number, count: number): Equipment => ({
  kind: 'hardSuction', id, name: `${size_in} in hard suction, 10 ft`, carriedBy, size_in, section_ft: 10, count,
})

/** What rides on the apparatus. */
export const equipment: readonly Equipment[] = [
  tank('tank-11', 'tender-11', 3000, 29), tank('tank-12', 'tender-12', 2100), tank('tank-21', 'tender-21', 2100, 28), tank('tank-22', 'tender-22', 1500),
  tank('tank-71', 'tender-71', 3500), tank('tank-72', 'tender-72', 3000),
  hose('hose-11', 'engine-11', 5, 1000), hose('hose-11-3', 'engine-11', 3, 400), hose('hose-12', 'engine-12', 4, 800), hose('hose-21', 'engine-21', 4, 600),
  hose('hose-22', 'engine-22', 3, 800), hose('hose-71', 'engine-71', 5, 1000),
  suction('suction-11', 'engine-11', 6, 4), suction('suction-12', 'engine-12', 6, 2), suction('suction-21', 'engine-21', 6, 2), suction('suction-22', 'engine-22', 4.5, 2),
  { kind: 'strainer', id: 'strainer-11', name: 'Barrel strainer', carriedBy: 'engine-11', style: 'barrel', size_in: 6 },
  { kind: 'strainer', id: 'strainer-12', name: 'Floating strainer', carriedBy: 'engine-12', style: 'floating', size_in: 6 },
  { kind: 'strainer', id: 'strainer-21', name: 'Low-level strainer', carriedBy: 'engine-21', style: 'low-level', size_in: 6 },
  { kind: 'strainer', id: 'strainer-22', name: 'Floating strainer', carriedBy: 'engine-22', style: 'floating', size_in: 4.5 },
  { kind: 'jetSiphon', id: 'siphon-11', name: 'Jet siphon', carriedBy: 'tender-11', size_in: 6, drive_in: 1.5 },
  { kind: 'jetSiphon', id: 'siphon-21', name: 'Jet siphon', carriedBy: 'tender-21', size_in: 6, drive_in: 1.75 },
]
