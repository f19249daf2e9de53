import { beforeEach, describe, expect, it } from 'vitest'
import { issue } from '@/lib/issue'
import { Client } from '@/app/_client/client'
import { keptTransport } from '@/app/_client/kept-transport'
import { memoryOutbox, type Outbox } from '@/app/_client/outbox'
import { memoryShelf, type Shelf } from '@/app/_client/shelf'
import { liftOf, opened, setLift, settled } from './client-steps'
import { FakeServer } from './fake-server'
import { manualTimers } from './manual-timers'
import { sampleDistrict, samplePlan } from './sample-documents'

let server: FakeServer
/** What stays on the device when a window closes. */
let device: { outbox: Outbox; shelf: Shelf }

const newDevice = () => ({ outbox: memoryOutbox(), shelf: memoryShelf() })

function newWindow({ outbox, shelf } = device): Client {
  const client: Client = new Client({
    transport: keptTransport({ server: server.transport(), shelf, outbox, refused: (created) => client.refuse(created) }),
    outbox, shelf, timers: manualTimers(), now: () => '2026-01-01T00:00:00Z',
  })
  return client
}

beforeEach(() => {
  server = new FakeServer()
  device = newDevice()
  for (const doc of [sampleDistrict(), samplePlan()]) server.kept.set(doc.id, { doc, history: [], isDeleted: false })
})

describe('with the server away', () => {
  it('opens what was opened before, and not what never was', async () => {
    await opened(newWindow(), 'P')
    server.isAway = true
    const client = await opened(newWindow(), 'P', 'D')
    expect(client.view('P')).toMatchObject({ status: 'ready', doc: { name: 'Barn' } })
    expect(client.view('D')).toMatchObject({ status: 'unreachable' })
  })

  it('has the document as it last stood, not as it was first loaded', async () => {
    const first = await opened(newWindow(), 'P')
    first.edit('P', setLift(12), { label: 'lift' })
    await first.flush()
    server.isAway = true
    expect(liftOf((await opened(newWindow(), 'P')).view('P').doc)).toBe(12)
  })

  it('lists what was listed before, and what was made since', async () => {
    await newWindow().refreshList()
    server.isAway = true
    const client = newWindow()
    await client.create({ ...samplePlan(), id: 'P2', name: 'Sawmill' }, { label: 'new plan' })
    await client.refreshList()
    expect(client.documentList()).toMatchObject({ status: 'ready', entries: [{ id: 'P2', kind: 'plan', districtId: 'D' }, { id: 'D' }, { id: 'P' }] })
  })

  it('keeps fifty edits over a closed window, and the server has each of them once, in order', async () => {
    await opened(newWindow(), 'P')
    server.isAway = true
    const first = await opened(newWindow(), 'P')
    for (let lift = 1; lift <= 50; lift += 1) first.edit('P', setLift(lift / 2), { label: 'lift' })
    await first.flush()
    expect(first.saveState()).toMatchObject({ state: 'waiting', unsentCount: 50, unkeptCount: 0 })

    const second = await opened(newWindow(), 'P')
    expect(liftOf(second.view('P').doc)).toBe(25)
    server.isAway = false
    await second.flush()
    const { history, doc } = server.kept.get('P')!
    expect(history.map(({ body }) => (body.kind === 'setFields' ? body.set.lift_ft : undefined))).toEqual(Array.from({ length: 50 }, (_, i) => (i + 1) / 2))
    expect(liftOf(doc)).toBe(25)
    expect(second.saveState()).toMatchObject({ state: 'saved', unsentCount: 0 })
    expect(await device.outbox.docIds()).toEqual([])
  })

  it('says so when the disk takes nothing, and that nothing is lost when it does', async () => {
    const full: Outbox = { ...device.outbox, keep: () => Promise.reject(new Error('full')) }
    const client = await opened(newWindow({ ...device, outbox: full }), 'P')
    server.isAway = true
    client.edit('P', setLift(12), { label: 'lift' })
    await client.flush()
    expect(client.saveState()).toMatchObject({ state: 'unkept', unkeptCount: 1 })
    server.isAway = false
    await client.flush()
    await settled()
    expect(client.saveState()).toMatchObject({ state: 'saved', unkeptCount: 0 })
  })
})

it('shows what is here while the server takes its time, and what the server says after it', async () => {
  await opened(newWindow(), 'P')
  let answer = () => {}
  const slow = { ...server.transport(), load: async (docId: string) => { await new Promise<void>((resolve) => { answer = resolve }); return server.transport().load(docId) } }
  const timers = manualTimers()
  const client = new Client({ ...device, timers, transport: keptTransport({ server: slow, ...device, timers }) })
  await opened(client, 'P')
  expect(client.view('P').status).toBe('loading')
  timers.runAll()
  await settled()
  expect(client.view('P')).toMatchObject({ status: 'ready', isAway: true })
  server.take({ id: 'e', docId: 'P', base: 0, by: 'desk', at: '', body: setLift(9) })
  answer()
  await client.pull('P')
  expect(liftOf(client.view('P').doc)).toBe(9)
  expect(client.view('P').isAway).toBe(false)
})

describe('what is made while the server is away', () => {
  it('comes home before the edits to it, a district before its plans', async () => {
    server.isAway = true
    const client = newWindow()
    const district = { ...sampleDistrict(), id: 'D2' }
    expect(await client.create([district, { ...samplePlan(), id: 'P2', districtId: 'D2' }], { label: 'new' })).toBeUndefined()
    await opened(client, 'P2')
    client.edit('P2', setLift(7), { label: 'lift' })
    await client.flush()
    expect(server.kept.has('P2')).toBe(false)

    const later = newWindow()
    server.isAway = false
    await later.resume()
    await settled()
    await later.flush()
    expect([...server.kept.keys()]).toEqual(['D', 'P', 'D2', 'P2'])
    expect(liftOf(server.doc('P2'))).toBe(7)
    expect(await device.outbox.created()).toEqual([])
  })

  it('is there once, even when the answer was lost', async () => {
    server.isAway = true
    const client = newWindow()
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'copy' })
    server.isAway = false
    server.losesAnswers = true
    await client.refreshList()
    server.losesAnswers = false
    await client.refreshList()
    expect(client.documentList().entries.filter(({ id }) => id === 'P2')).toHaveLength(1)
    expect(await device.outbox.created()).toEqual([])
  })

  it('is never sent when it was put away again', async () => {
    server.isAway = true
    const client = newWindow()
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'copy' })
    expect(await client.remove('P2', { label: 'put away' })).toBeUndefined()
    server.isAway = false
    await client.refreshList()
    expect(server.kept.has('P2')).toBe(false)
  })

  it('is not lost to another window that knew nothing of it', async () => {
    const other = newWindow()
    await other.refreshList()
    server.isAway = true
    const client = newWindow()
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'copy' })
    await opened(other, 'P2')
    other.edit('P2', setLift(7), { label: 'lift' })
    server.isAway = false
    await other.flush()
    expect(liftOf(server.doc('P2'))).toBe(7)
    expect(other.saveState().refusals).toEqual([])
  })

  it('stays on the device with the reason when the server will not have it', async () => {
    server.isAway = true
    const client = await opened(newWindow())
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'copy' })
    server.isAway = false
    const why = issue('district-missing', 'block')
    const transport = { ...server.transport(), create: () => Promise.resolve(why) }
    const late: Client = new Client({ ...device, timers: manualTimers(), transport: keptTransport({ server: transport, ...device, refused: (created) => late.refuse(created) }) })
    await opened(late, 'P2')
    expect(late.saveState().refusals).toMatchObject([{ docId: 'P2', label: 'copy', issue: why }])
    expect(late.view('P2')).toMatchObject({ status: 'ready', doc: { name: 'Barn' } })
    expect(await device.outbox.created()).toHaveLength(1)
  })
})

it('keeps both values of a conflict over a closed window, and lets a person choose then', async () => {
  const [cab, station] = [device, newDevice()]
  const pond = await opened(newWindow(cab), 'P')
  const desk = await opened(newWindow(station), 'P')
  server.isAway = true
  pond.edit('P', setLift(14), { label: 'lift' })
  await pond.flush()
  server.isAway = false
  desk.edit('P', setLift(9), { label: 'lift' })
  await desk.flush()
  await pond.flush()
  expect(pond.saveState().conflictCount).toBe(1)
  await settled()

  const again = newWindow(cab)
  await again.resume()
  await settled()
  const [conflict] = again.view('P').conflicts
  expect(conflict).toMatchObject({ values: [{ path: 'fillSites/F1/lift_ft', mine: 14, theirs: 9 }] })
  again.resolve('P', conflict!.id, 'mine', { label: 'mine' })
  await again.flush()
  await settled()
  expect(liftOf(server.doc('P'))).toBe(14)
  expect(await cab.outbox.docIds()).toEqual([])
})

it('lets two devices edit one plan with the network gone, and brings both home', async () => {
  const devices = [newDevice(), newDevice()]
  const windows = await Promise.all(devices.map((one) => opened(newWindow(one), 'P')))
  server.isAway = true
  windows[0]!.edit('P', setLift(14), { label: 'lift' })
  windows[1]!.edit('P', { kind: 'setFields', collection: 'fillSites', id: 'F2', set: { name: 'Ford' } }, { label: 'name' })
  windows[1]!.edit('P', { kind: 'setFields', set: { name: 'Barn and silo' } }, { label: 'name' })
  for (const window of windows) await window.flush()
  server.isAway = false
  for (const window of windows) await window.flush()
  for (const window of windows) await window.pull('P')
  for (const window of windows) {
    expect(window.view('P').doc).toMatchObject({ name: 'Barn and silo', fillSites: [{ lift_ft: 14 }, { name: 'Ford' }] })
    expect(window.saveState()).toMatchObject({ conflictCount: 0, unsentCount: 0 })
  }
})
