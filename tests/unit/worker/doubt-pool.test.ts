import { describe, expect, it } from 'vitest'
import { DoubtPool } from '@/app/_worker/doubt-pool'
import { doubtService, type DoubtService } from '@/app/_worker/doubt-service'
import { dependableFlow, doubtOf, firstToMeasure, flowDoubt, prepareDoubt } from '@/lib/doubt'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const NIGHTS = 64
const turn = () => new Promise<void>((resolve) => { setTimeout(resolve, 0) })
const open = () => new AbortController().signal
/** Workers whose answers come in an order of their own. */
const poolOf = (count: number, change: (service: DoubtService) => DoubtService = (service) => service) =>
  new DoubtPool(Array.from({ length: count }, () => change(doubtService())), turn, NIGHTS)

describe('the pool of workers', () => {
  const bundle = smallBundle()
  const model = prepareDoubt(compilePlan(bundle))
  if (!model) throw new Error('the plan must have an answer')
  const alone = doubtOf(model, { nightCount: NIGHTS })

  it('gives the same answer as one processor alone, whatever their number', async () => {
    for (const count of [1, 3]) expect(await poolOf(count).whole(bundle, { signal: open() })).toEqual(alone)
  })

  it('gives the same dependable flow and the same number to measure first as the command line', async () => {
    const whole = await poolOf(2).whole(bundle, { signal: open() })
    const line = flowDoubt(model, { nightCount: NIGHTS })
    expect(whole?.dependable).toEqual(line.dependable)
    expect(whole?.dependable).toEqual(dependableFlow(model, { nightCount: NIGHTS }))
    expect(firstToMeasure(whole?.ofFlow)).toEqual(line.firstToMeasure)
  })

  it('tells how far it is, up to the whole', async () => {
    const shares: number[] = []
    await poolOf(2).whole(bundle, { signal: open(), onProgress: (share) => shares.push(share) })
    expect(shares.at(-1)).toBe(1)
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
  })

  it('stops when told to, and the next job does not wait for the rest', async () => {
    let nights = 0
    const pool = poolOf(2, (service) => ({ ...service, sample: async (seed, from, count) => { nights += count; await turn(); return service.sample(seed, from, count) } }))
    const ending = new AbortController()
    const stopped = pool.whole(bundle, { signal: ending.signal, onProgress: () => { ending.abort() } })
    expect(await stopped).toBeUndefined()
    expect(nights).toBeLessThan(NIGHTS)
    expect((await pool.whole(bundle, { signal: open() }))?.dependable).toEqual(alone.dependable)
  })

  it('compiles a plan once for all that is asked about it', async () => {
    let times = 0
    const pool = poolOf(2, (service) => ({ ...service, prepare: (given) => { times += 1; return service.prepare(given) } }))
    await pool.whole(bundle, { signal: open() })
    await pool.whole({ ...bundle }, { signal: open() })
    expect(times).toBe(1)
    await pool.whole(smallBundle({ 'district.apparatus.2.tank_gal': 1500 }), { signal: open() })
    expect(times).toBe(2)
  })

  it('has the last plan’s nights at hand for another page of it, and of no other', async () => {
    const pool = poolOf(1)
    expect(pool.kept(bundle)).toBeUndefined()
    const whole = await pool.whole(bundle, { signal: open() })
    expect(pool.kept(smallBundle())).toBe(whole)
    expect(pool.kept(smallBundle({ 'district.apparatus.2.tank_gal': 1500 }))).toBeUndefined()
  })

  it('has nothing to say of a plan that is blocked', async () => {
    expect(await poolOf(1).whole(smallBundle({ 'district.apparatus.2.tank_gal': undefined, 'district.apparatus.3.tank_gal': undefined }), { signal: open() })).toBeUndefined()
  })

  it('hands a failure on and goes on with the next job', async () => {
    let isBroken = true
    const pool = poolOf(1, (service) => ({ ...service, prepare: (given) => (isBroken ? Promise.reject(new Error('gone')) : service.prepare(given)) }))
    await expect(pool.whole(bundle, { signal: open() })).rejects.toThrow('gone')
    isBroken = false
    expect(await pool.whole(bundle, { signal: open() })).toEqual(alone)
  })
})
