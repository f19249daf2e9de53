import { expect, test } from 'vitest'
import { speedWords } from '@/app/drill/gauge-words'
import { createDrill, drillRig, getScenario } from '@/lib/priming/drill'

test('the engine is read on a scale that begins where it idles', () => {
  const drill = createDrill(drillRig(), getScenario('primer-fails'))
  const { idleShare } = drill.rig
  expect(speedWords(drill)).toBe('idle')
  const at = (speedShare: number) => speedWords({ rig: drill.rig, state: { ...drill.state, speedShare } })
  expect(at(idleShare + 0.4 * (1 - idleShare))).toBe('40%')
  expect(at(0.999)).toBe('full')
})
