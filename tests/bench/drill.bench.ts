import { drillRig, getScenario, playScript, debrief, type Move } from '../../lib/priming/drill'

/** Simulated seconds a second of the prime drill, and the time its explanation takes. Run: npx tsx tests/bench/drill.bench.ts */
const moves: readonly Move[] = [{ at_s: 2, control: 'tankToPump', to: 1 }, { at_s: 4, control: 'tankFill', to: 1 }, { at_s: 6, control: 'throttle', to: 1, over_s: 4 },
  { at_s: 14, control: 'intake', to: 0.03, over_s: 1 }, { at_s: 140, control: 'intake', to: 1, over_s: 4 }]
const rig = drillRig()
const scenario = getScenario('primer-fails')

for (let warm = 0; warm < 3; warm++) playScript(rig, scenario, moves, 300)
const runs = 5
const begun = performance.now()
for (let run = 0; run < runs; run++) playScript(rig, scenario, moves, 300)
const took_s = (performance.now() - begun) / 1000
process.stdout.write(`drill: ${Math.round((runs * 300) / took_s)} simulated seconds a second, ${((took_s / (runs * 300 * 50)) * 1e6).toFixed(1)} µs a step\n`)

const wrong = playScript(rig, scenario, [...moves.slice(0, 3), { at_s: 14, control: 'intake', to: 1, over_s: 2 }], 120)
const from = performance.now()
const findings = debrief(wrong)
process.stdout.write(`debrief: ${findings.length} findings in ${Math.round(performance.now() - from)} ms\n`)
