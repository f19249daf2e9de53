import { compileShuttle, runShuttle, sustainableFlow } from '@/lib/shuttle'
import { compareHandbook, compilePlan, creditCheck, evaluatePlan } from '@/lib/supply'
import { shippedBundle } from '../unit/demo/shipped-demo'
import { cost, line, ratio } from './support/cost'

/** What the answers to a plan cost, from the bundle to figures; the largest plan of the demo, six tenders and two fill sites. */
const bundle = shippedBundle('plan-school')
const compiled = compilePlan(bundle)
if (!compiled.spec) throw new Error('the plan of the demo is blocked')
const scenario = compileShuttle(compiled.spec)
const ms = (us: number) => us / 1000

console.log('answers to the demo plan of the school')
const run_us = cost(200, () => runShuttle(scenario))
const flow_us = cost(20, () => sustainableFlow(scenario))
const quick_us = cost(5, () => evaluatePlan(bundle, { quick: true }))
const links_us = cost(2, () => evaluatePlan(bundle))
line('one run with all its figures', ms(run_us), 'ms')
line('sustainable flow', ms(flow_us), 'ms')
line('a plan to numbers, hydraulics and ways', ms(cost(5, () => compilePlan(bundle))), 'ms')
line('first answer', ms(quick_us), 'ms')
line('with the limiting link', ms(links_us), 'ms')
line('handbook forms beside the simulation', ms(cost(10, () => compareHandbook(compiled))), 'ms')
line('credit check', ms(cost(2, () => creditCheck(compiled))), 'ms')
ratio('runs that a sustainable flow costs', flow_us / run_us)
ratio('whole answer over first answer', links_us / quick_us)
