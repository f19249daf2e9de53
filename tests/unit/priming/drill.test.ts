import { describe, expect, test } from 'vitest'
import { loopVacuum_ft, primeTime } from '../../../lib/priming'
import { advanceDrill, beginDrill, columnOf, controlNames, createDrill, debrief, drillRig, drillScenarios, getScenario, giveUpDrill, intakeGauge, movementsOf,
  playScript, recordColumns, recordRows, restControls, scenarioRig, scoreDrill, scriptHands, stepDrill, tankHead_ft, whatIf, type Move } from '../../../lib/priming/drill'

const rig = drillRig()
const loop: readonly Move[] = [{ at_s: 2, control: 'tankToPump', to: 1 }, { at_s: 4, control: 'tankFill', to: 1 }, { at_s: 6, control: 'throttle', to: 1, over_s: 4 }]
const cracked: readonly Move[] = [...loop, { at_s: 14, control: 'intake', to: 0.03, over_s: 1 }]
const finish: readonly Move[] = [{ at_s: 122, control: 'intake', to: 0.1, over_s: 10 }, { at_s: 135, control: 'intake', to: 1, over_s: 4 },
  { at_s: 142, control: 'tankToPump', to: 0, over_s: 3 }, { at_s: 147, control: 'discharge', to: 0.7, over_s: 4 }, { at_s: 148, control: 'tankFill', to: 0, over_s: 3 }]
const codesOf = (events: readonly { code: string }[]): string[] => events.map(({ code }) => code)

describe('rig and start', () => {
  test('numbers out of range are refused by name', () => {
    expect(() => drillRig({ lift_ft: -1 })).toThrow(/lift_ft is -1/)
    expect(() => drillRig({ cavitation_absolute_ft: 40 })).toThrow(/cavitation_absolute_ft/)
    expect(() => drillRig({ idleShare: 1 })).toThrow(/idleShare/)
    expect(() => beginDrill(rig, { tankWater_gal: 2000, pumpGasShare: 0 })).toThrow(/tankWater_gal/)
    expect(() => getScenario('no-such')).toThrow(RangeError)
  })

  test('with every control at rest nothing moves', () => {
    const state = beginDrill(rig, { tankWater_gal: 500, pumpGasShare: 0 })
    for (let step = 0; step < 500; step++) stepDrill(rig, state, restControls)
    expect(state).toMatchObject({ tankWater_gal: 500, hoseWater_gal: 0, flow_gpm: 0, drawn_gal: 0, discharged_gal: 0 })
    expect(intakeGauge(rig, state)).toBe(0)
  })

  test('a wet pump with tank-to-pump open shows the tank’s height on the intake gauge', () => {
    const state = beginDrill(rig, { tankWater_gal: 1000, pumpGasShare: 0 })
    for (let step = 0; step < 100; step++) stepDrill(rig, state, { ...restControls, tankToPump: 1 })
    expect(intakeGauge(rig, state)).toBeCloseTo(6 / 2.309, 2)
  })
})

describe('hands', () => {
  test('a scripted move with a time is a straight ramp', () => {
    const hands = scriptHands([{ at_s: 1, control: 'throttle', to: 1, over_s: 2 }])
    const controls = { ...restControls }
    const seen = [0.5, 1, 2, 3, 4].map((time_s) => {
      hands(controls, { ...beginDrill(rig, { tankWater_gal: 0, pumpGasShare: 0 }), time_s })
      return controls.throttle
    })
    expect(seen).toEqual([0, 0, 0.5, 1, 1])
  })

  test('changes without a pause in one direction are one movement of the hand', () => {
    const moves: Move[] = [{ at_s: 1, control: 'intake', to: 0.1 }, { at_s: 1.5, control: 'intake', to: 0.3 }, { at_s: 1.6, control: 'throttle', to: 0.5 },
      { at_s: 2, control: 'intake', to: 0.2 }, { at_s: 9, control: 'intake', to: 0.1 }]
    expect(movementsOf(restControls, moves).map(({ control, from, to }) => [control, from, to])).toEqual([
      ['intake', 0, 0.3], ['throttle', 0, 0.5], ['intake', 0.3, 0.2], ['intake', 0.2, 0.1]])
  })
})

describe('a run', () => {
  test('is kept ten times a second, with a row of names on top of the table', () => {
    const drill = playScript(rig, getScenario('primer-fails'), loop, 10)
    expect(drill.record.rowCount).toBe(101)
    expect(Array.from(columnOf(drill.record, 'time_s').subarray(0, 3))).toEqual([0, 0.1, 0.2])
    const table = recordRows(drill.record)
    expect(table[0]).toEqual([...recordColumns])
    expect(table).toHaveLength(102)
    expect(table.every((row) => row.length === recordColumns.length)).toBe(true)
  })

  test('of changes made by hand plays again to the same end from its own moves', () => {
    const drill = playScript(rig, getScenario('primer-fails'), cracked, 60)
    const again = playScript(rig, getScenario('primer-fails'), drill.moves, 60)
    expect(again.state).toEqual(drill.state)
  })

  test('goes nowhere once it is over', () => {
    const drill = createDrill(rig, getScenario('primer-works'))
    advanceDrill(drill)
    giveUpDrill(drill)
    giveUpDrill(drill)
    advanceDrill(drill)
    expect(drill.stepCount).toBe(1)
    expect(codesOf(drill.events)).toEqual(['gave-up'])
  })

  test('ends by itself at the scenario’s longest time', () => {
    const scenario = { ...getScenario('primer-works'), most_s: 3 }
    expect(codesOf(playScript(rig, scenario, []).events)).toEqual(['time-up'])
  })

  test('marks do not change as the run goes on', () => {
    const drill = playScript(rig, getScenario('primer-fails'), loop, 12)
    expect(drill.marks.map(({ state }) => Number(state.time_s.toFixed(6)))).toEqual([0, 5, 10])
  })
})

describe('events and their explanation', () => {
  test('the handbook’s order primes and meets the goal with no trouble', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [...cracked, ...finish])
    expect(codesOf(drill.events)).toEqual(['prime-got', 'goal-met'])
    const score = scoreDrill(drill)
    expect(score.isGoalMet).toBe(true)
    expect(score.points).toBeGreaterThan(90)
    expect(debrief(drill)).toEqual([])
  })

  test('opening the intake at once binds the pump, and the explanation is that movement', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [...loop, { at_s: 14, control: 'intake', to: 1, over_s: 2 }], 40)
    const finding = debrief(drill).find(({ event }) => event.code === 'air-bound')
    expect(finding?.cause?.movement).toMatchObject({ control: 'intake', from: 0, to: 1 })
    // Half a turn of the same hand would have kept the pressure.
    expect(finding?.cause?.withoutIt.discharge_psi).toBeGreaterThan(140)
    expect(finding?.remedies.find(({ control }) => control === 'intake')?.averts).toBe(true)
  })

  test('shutting tank-to-pump before the water has come binds the pump, and the explanation is that movement', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [...cracked, { at_s: 60, control: 'tankToPump', to: 0, over_s: 2 }], 90)
    expect(debrief(drill).find(({ event }) => event.code === 'air-bound')?.cause?.movement.control).toBe('tankToPump')
  })

  test('too little throttle stalls the column; more throttle would have lifted it', () => {
    const slow = cracked.map((move) => (move.control === 'throttle' ? { ...move, to: 0.3 } : move))
    const finding = debrief(playScript(rig, getScenario('primer-fails'), slow, 150)).find(({ event }) => event.code === 'vacuum-short')
    expect(finding?.event.values.eyeVacuum_ft).toBeLessThan(finding?.event.values.lift_ft ?? 0)
    expect(finding?.remedies.find(({ control }) => control === 'throttle')?.averts).toBe(true)
  })

  test('an open discharge before the prime drains the tank', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [{ at_s: 2, control: 'tankToPump', to: 1 }, { at_s: 4, control: 'discharge', to: 1 },
      { at_s: 6, control: 'throttle', to: 1 }], 250)
    expect(codesOf(drill.events)).toEqual(expect.arrayContaining(['discharge-drains-tank', 'tank-empty']))
    expect(debrief(drill)[0]?.cause?.movement.control).toBe('discharge')
  })

  test('a fill left open after the prime overflows; shutting it would not have', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [...cracked, ...finish.filter(({ control }) => control !== 'tankFill' && control !== 'discharge')], 220)
    const finding = debrief(drill).find(({ event }) => event.code === 'tank-overflow')
    expect(finding?.remedies.find(({ control }) => control === 'tankFill')?.averts).toBe(true)
  })

  test('an engine run up against shut valves heats the pump; a little flow would not have', () => {
    const drill = playScript(rig, getScenario('primer-fails'), [{ at_s: 2, control: 'tankToPump', to: 1 }, { at_s: 4, control: 'throttle', to: 1 }], 150)
    const finding = debrief(drill).find(({ event }) => event.code === 'pump-heating')
    expect(finding?.cause?.movement.control).toBe('throttle')
    expect(finding?.remedies.find(({ control }) => control === 'discharge')?.averts).toBe(true)
  })

  test('a drain left open keeps the vacuum low; shutting it lets the primer work', () => {
    const draw: Move[] = [{ at_s: 2, control: 'intake', to: 1 }, { at_s: 4, control: 'primer', to: 1 }]
    const leaking = playScript(rig, getScenario('air-leak'), draw, 60)
    expect(codesOf(leaking.events)).toEqual(['air-leak'])
    const mended = playScript(rig, getScenario('air-leak'), [...draw, { at_s: 20, control: 'drain', to: 0 }], 60)
    expect(codesOf(mended.events)).toContain('prime-got')
  })

  test('a shallow strainer loses the prime at full flow and keeps it at a little', () => {
    const at = (opening: number): Move[] => [{ at_s: 2, control: 'intake', to: 1, over_s: 2 }, { at_s: 4, control: 'primer', to: 1 }, { at_s: 45, control: 'primer', to: 0 },
      { at_s: 47, control: 'throttle', to: 0.8, over_s: 3 }, { at_s: 52, control: 'discharge', to: opening, over_s: 4 }]
    const bold = playScript(rig, getScenario('strainer-shallow'), at(1), 120)
    expect(codesOf(bold.events)).toEqual(expect.arrayContaining(['whirlpool', 'prime-lost']))
    expect(codesOf(playScript(rig, getScenario('strainer-shallow'), at(0.32), 120).events)).toContain('goal-met')
  })

  test('a big fill line cavitates wide open and primes gated', () => {
    const open = playScript(rig, getScenario('big-fill-line'), loop, 20)
    expect(codesOf(open.events)).toEqual(['cavitating'])
    const finding = debrief(open)[0]
    expect(finding?.remedies.find(({ control, at }) => control === 'tankFill' && at === 0.6)?.averts).toBe(true)
  })

  test('a what-if with no change is the run itself', () => {
    const drill = playScript(rig, getScenario('primer-fails'), cracked, 61)
    const same = whatIf(drill, { from_s: 30 }, 60)
    const at60 = playScript(rig, getScenario('primer-fails'), cracked, 60)
    expect(same.values.tank_gal).toBe(at60.state.tankWater_gal)
    expect(same.values.gasShare).toBe(at60.state.gasShare)
  })

  test('giving up in time is the right end where the lift is out of reach, and nowhere else', () => {
    for (const code of ['lift-too-high', 'primer-fails'] as const) {
      const drill = playScript(rig, getScenario(code), cracked, 40)
      giveUpDrill(drill)
      expect(scoreDrill(drill).isGoalMet).toBe(code === 'lift-too-high')
    }
  })
})

test('every scenario makes a rig that stands and starts at rest or with a fault shown', () => {
  for (const scenario of drillScenarios) {
    const played = scenarioRig(rig, scenario)
    expect(scenario.start(played).tankWater_gal).toBe(750)
    expect(controlNames.filter((control) => scenario.controls[control] !== 0)).toEqual(scenario.code === 'air-leak' ? ['drain'] : [])
  }
})

describe('the drill and the card agree', () => {
  test('the loop’s vacuum with the intake shut is the card’s law', () => {
    const drill = playScript(rig, getScenario('primer-fails'), loop, 14)
    const { flow_gpm, tankWater_gal, eye_absolute_ft } = drill.state
    expect(drill.rig.atmosphere_absolute_ft - eye_absolute_ft).toBeCloseTo(loopVacuum_ft(flow_gpm, drill.rig.tankToPump_gpmPerSqrtFt, 1, tankHead_ft(drill.rig, tankWater_gal)), 2)
  })

  test('the primer takes the time that the sheet expects, within a tenth', () => {
    const drill = playScript(rig, getScenario('primer-works'), [{ at_s: 0, control: 'intake', to: 1 }, { at_s: 0, control: 'primer', to: 1 }], 60)
    const { expected_s = NaN } = primeTime({ primer: { capacity_gpm: rig.primer_gpm, stall_ft: rig.primerVacuum_ft }, hose_gal: rig.hose_gal, pump_gal: rig.pump_gal,
      lift_ft: rig.lift_ft, atmosphere_ft: rig.atmosphere_absolute_ft, rated_gpm: 1250 })
    const got = drill.events.find(({ code }) => code === 'prime-got')?.at_s ?? NaN
    // The event comes a second after the fact.
    expect(Math.abs(got - 1 - expected_s)).toBeLessThan(0.1 * expected_s)
  })
})

test('every column of the record has a name of its own, and a control’s column follows the control', () => {
  expect(new Set(recordColumns).size).toBe(recordColumns.length)
  const drill = playScript(rig, getScenario('primer-fails'), [{ at_s: 1, control: 'intake', to: 0.4 }], 3)
  expect(columnOf(drill.record, 'intake').at(-1)).toBe(0.4)
})
