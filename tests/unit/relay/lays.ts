import type { DraftAsk, PumperHydraulics } from '@/lib/hydraulics'
import type { RelaySpec } from '@/lib/relay'

/** A pumper at draft that hardly anything holds back: 10,000 gpm at 400 psi. */
export const endless: PumperHydraulics = { rated_gpm: 10_000, curvePoints: [{ netPressure_psi: 400, flow_gpm: 10_000 }] }

export const atPond = (pumper: PumperHydraulics, lift_ft = 5): Omit<DraftAsk, 'ask'> => ({
  pumper, suction: { size_in: 6, lineCount: 1, length_ft: 20 }, place: { lift_ft, altitude_ft: 1000, water_degF: 60 },
})

/** A source of pressure and flow without end, on level ground beside the water. */
export const endlessSource: RelaySpec['source'] = { id: 'source', kind: 'hydrant', pumper: endless, hydrant: { static_psi: 80, residual_psi: 79.9, flow_gpm: 10_000 } }

export const pumperOf = (id: string, rated_gpm = 1000) => ({ id, pumper: { rated_gpm } })

/** 1,250 gpm pumper at a pond, two 1,000 gpm pumpers, 3,000 ft of 5 in hose over a ridge of 200 ft. */
export const overRidge: RelaySpec = {
  mode: 'closed',
  source: { id: 'pond', kind: 'draft', draft: atPond({ rated_gpm: 1250 }) },
  pumpers: [pumperOf('a'), pumperOf('b')],
  lay: [{ length_ft: 3000, lines: [{ size_in: 5 }] }],
  profile: [{ distance_ft: 0, height_ft: 500 }, { distance_ft: 1500, height_ft: 700 }, { distance_ft: 3000, height_ft: 560 }],
}
