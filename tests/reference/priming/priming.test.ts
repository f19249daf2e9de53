import { backUpPrimeWindow, backUpSteps, backUpBudget, leastTankFill_in, leastTankToPump_gpm, LOOP_PRESSURE_PSI, pipeBore_in, primeLimit_s,
  primeTime, tankFillCoefficient, tankToPumpThatPasses, timeToEmpty_s, assumedFillVelocityHeads } from '../../../lib/priming'
import { hoseVolume_gal } from '../../../lib/hydraulics'
import type { Given } from '../reference-case'
import { testCases } from '../test-cases'

const pump = { capacity_gpm: 100, stall_ft: 26 }
const ask = { primer: pump, hose_gal: 20, pump_gal: 10, lift_ft: 10, atmosphere_ft: 33.9, rated_gpm: 1250 }
const curve = [{ flow_gpm: 875, pressure_psi: 200 }, { flow_gpm: 1250, pressure_psi: 150 }]
const rig = { tank_gal: 1000, tankBottom_ft: 0.5, tankTop_ft: 6, curve, hose_gal: 25, pump_gal: 12 }
const site = { lift_ft: 5, atmosphere_ft: 33.9, cavitation_ft: 7 }
/** The usual supply: a line that just gives its 500 gpm. */
const passing = tankToPumpThatPasses(1000, 26.9, 0.5 + 0.2 * 5.5)

const laws: Record<string, (given: Given) => number> = {
  primeLimit_s: (given) => primeLimit_s(given.number('rated_gpm')),
  primeLimitWithIntake_s: (given) => primeTime({ ...ask, rated_gpm: given.number('rated_gpm'), hasAuxiliaryIntake: true, auxiliary_gal: given.number('auxiliary_gal') }).limit_s,
  airToRemove_gal: (given) => primeTime({ ...ask, hose_gal: hoseVolume_gal(given.number('bore_in'), given.number('length_ft')) }).air_gal - ask.pump_gal,
  primeTime_s: (given) => primeTime({ ...ask, hose_gal: given.number('hose_gal'), pump_gal: given.number('pump_gal'), lift_ft: given.number('lift_ft'),
    primer: { capacity_gpm: given.number('capacity_gpm'), stall_ft: given.number('stall_ft') } }).expected_s ?? NaN,
  leastTankToPump_gpm: (given) => leastTankToPump_gpm(given.number('tank_gal')),
  leastTankFill_in: (given) => leastTankFill_in(given.number('tank_gal')),
  loopPressure_psi: () => LOOP_PRESSURE_PSI,
  gatesTankFill: (given) => {
    const fill = given.choice('fill_in', ['1', '1.5', '2'])
    const verdict = backUpPrimeWindow({ ...rig, tankToPump_gpmPerSqrtFt: passing, tankWater_gal: given.number('tankShare') * rig.tank_gal,
      tankFill_gpmPerSqrtPsi: tankFillCoefficient(pipeBore_in[fill] ?? NaN, assumedFillVelocityHeads.middle) }, site).verdict
    return verdict === 'gate-tank-fill' ? 1 : 0
  },
  timeToEmpty_s: (given) => timeToEmpty_s(given.number('water_gal'), given.number('flow_gpm')),
  vacuumForLift_inHg: (given) => {
    const at = { ...site, lift_ft: given.number('lift_ft') }
    const own = { ...rig, tankToPump_gpmPerSqrtFt: 130, tankFill_gpmPerSqrtPsi: 45 }
    const window = backUpPrimeWindow(own, at)
    const full = backUpSteps(at, window, backUpBudget(own, at, window, 150)).find(({ code }) => code === 'intake-full')
    return full?.waitFor.find(({ gauge }) => gauge === 'intake_inHg')?.value ?? NaN
  },
  highestLift_ft: (given) => backUpPrimeWindow({ ...rig, tankToPump_gpmPerSqrtFt: 130, tankFill_gpmPerSqrtPsi: 45 },
    { lift_ft: 5, atmosphere_ft: given.number('atmosphere_ft'), cavitation_ft: given.number('cavitation_ft') }).top_ft,
}

testCases('priming/priming.json', laws)
