import { expect, it } from 'vitest'
import { inUnits } from '@/app/_text'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

it('turns the US figures of a fixed sentence into those in use, and nothing else of it', () => {
  const text = '4 in at 500 gpm, 1,000 gpm and 10 inHg lost in 5 min; 2 of 3 at 20 psi'
  expect(inUnits(text, 'us')).toBe(text)
  // 1 in is 25.4 mm, 1 gal 3.785412 L, 1 psi 6.894757 kPa, 1 inHg 3.386 kPa: NIST SP 811, appendix B.
  expect(plain(inUnits(text, 'metric'))).toBe('102 mm at 1,893 L/min, 3,785 L/min and 34 kPa lost in 5 min; 2 of 3 at 138 kPa')
})
