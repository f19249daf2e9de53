import { expect, test } from 'vitest'
import { emptyDistrict } from '@/app/_home/create-district'
import { districtSchema } from '@/lib/plan'

test('a district of which only the name is known is a valid document, in the units of its maker', () => {
  for (const [system, units] of [['us', 'us'], ['metric', 'metric'], ['metric-bar', 'metric']] as const) {
    const district = emptyDistrict('d1', 'Alder Valley', system)
    expect(districtSchema.parse(district)).toEqual(district)
    expect(district.units).toBe(units)
  }
})
