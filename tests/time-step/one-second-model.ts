import type { DumpSpec, FeedSpec, FillSpec, LanePass, ShuttleSpec, TenderSpec } from '@/lib/shuttle/spec'

/*
 * A second opinion on the shuttle: plain one-second steps, no events, no closed forms.
 * It is slow on purpose and shares nothing with the simulation it checks except the
 * type of its input. Everything is looked at every second, in one fixed order:
 * clock and demand, one-lane stretches, vehicles on a timer, filling, dumping, pumpers, fire ground.
 */

type Doing = 'away' | 'queue-dump' | 'spot' | 'dump' | 'unspot' | 'rest' | 'to-fill' | 'queue-fill' | 'hookup' | 'standby' | 'fill' | 'unhook' | 'to-dump' | 'left'

type Truck = {
  spec: TenderSpec
  doing: Doing
  timer: number // seconds left of what it does, below 0: time already spent on the next thing
  minutesNow: number // minutes of this step in which its water can run
  since: number // when it joined the queue it stands in
  water: number
  dumpedAt: number[]
  dumpEndedAt: number
  restedAt: number // when its driver last began afresh
  pieces: Piece[] // of the leg it drives, the one it is on first
  stopped: boolean // stands before a one-lane stretch
}

// a leg is cut into pieces: open road, and stretches with the number of the one lane they go through
type Piece = { seconds: number; lane?: number }

const piecesOf = (seconds: number, passes: readonly LanePass[] = []): Piece[] => {
  const pieces: Piece[] = []
  let done = 0
  for (const pass of passes) {
    pieces.push({ seconds: (pass.fromShare - done) * seconds }, { seconds: (pass.upToShare - pass.fromShare) * seconds, lane: pass.laneIndex })
    done = pass.upToShare
  }
  return [...pieces, { seconds: (1 - done) * seconds }]
}

type Site = {
  spec: DumpSpec
  level: number
  front: number
  brought: number
  emptied: number // loads
  state: 'setup' | 'waiting' | 'pumping' | 'dead' | 'priming'
  primeTimer: number
  booster: number
  readyAt: number
  losses: number
  lowestSteady: number
}

export type StepAnswer = {
  delivered: number
  brought: number[]
  drawn: number
  byLays: number[]
  readyAt: number
  shortSeconds: number
  losses: number
  keptReserve: boolean
  dumpedAt: number[][]
  left: (number | undefined)[]
  end: number
}

export type StepQuestion = {
  flow?: number // asked throughout; absent: nothing is drawn and the tanks have no lip
  lastsAfterReady: number
  reserveFrom?: number
  step?: number // seconds, 1 unless a finer look is wanted
  onMark?: (mark: SeenMark) => void // what people at the sites would write down
  onStep?: (clock: number, brought: number) => void // gallons so far into the tanks of all dump sites
}

export type SeenMark = { truck: number; place: 'dump' | 'fill'; mark: 'arrived' | 'dumping' | 'empty' | 'left' | 'hookedUp' | 'filling' | 'full'; at: number }

const limitAt = (dump: DumpSpec, flow: number): number => {
  const points = [...dump.draftLimit]
  if (points.length === 0) return 0
  if (flow <= points[0]!.flow_gpm) return points[0]!.volume_gal
  while (points.length > 1) {
    const [a, b] = points as [(typeof points)[0], (typeof points)[0]]
    if (flow <= b.flow_gpm) return a.volume_gal + ((flow - a.flow_gpm) * (b.volume_gal - a.volume_gal)) / (b.flow_gpm - a.flow_gpm)
    points.shift()
  }
  return points[0]!.volume_gal
}

export function stepThrough(spec: ShuttleSpec, question: StepQuestion): StepAnswer {
  const open = question.flow === undefined
  const planned = spec.demand.stages.find((stage) => stage.flow_gpm > 0)?.flow_gpm ?? 0
  const flow = question.flow ?? planned
  const trucks: Truck[] = spec.tenders.map((t) => ({
    spec: t, doing: 'away', timer: t.arrive_s ?? Infinity, minutesNow: 0, since: 0, water: t.usable_gal, dumpedAt: [], dumpEndedAt: 0,
    restedAt: t.arrive_s ?? Infinity, pieces: [], stopped: false,
  }))
  const sites: Site[] = spec.dumps.map((d) => ({
    spec: d, level: d.startsFull ? d.capacity_gal : 0, front: 0, brought: 0, emptied: 0, state: 'setup', primeTimer: 0, booster: d.booster_gal, readyAt: Infinity, losses: 0, lowestSteady: Infinity,
  }))
  const ponds = spec.fills.map((f) => ({ spec: f, water: f.usable_gal ?? Infinity, drawn: 0, turnAt: -Infinity }))
  // hose lays: what each could give this second; its source is emptied at its whole flow from the moment it stands
  const lays = (spec.feeds ?? []).map((lay) => ({ lay, water: lay.usable_gal ?? Infinity, gives: 0, brought: 0 }))
  // water that several draw on: one bucket; once it could not give what was asked, its lays are held to their part of the inflow
  const drawers = [...spec.fills, ...(spec.feeds ?? [])].filter((x) => x.sourceId !== undefined && x.usable_gal !== undefined)
  const buckets = [...new Set(drawers.map((x) => x.sourceId!))].filter((id) => drawers.filter((x) => x.sourceId === id).length > 1).map((id) => {
    const mine = drawers.filter((x) => x.sourceId === id)
    let askedAtMost = 0
    for (const f of spec.fills) if (mine.includes(f)) askedAtMost += Math.max(...f.bayRate_gpm.slice(0, f.flowingBayCount ?? f.bayCount).map((rate, k) => rate * (k + 1)))
    for (const f of spec.feeds ?? []) if (mine.includes(f)) askedAtMost += f.flow_gpm
    const holds = Math.min(...mine.map((x) => x.usable_gal!))
    return { id, mine, holds, water: holds, inflow: Math.min(...mine.map((x) => x.inflow_gpm ?? 0)), askedAtMost, ranDry: false }
  })
  const bucketOf = (x: FillSpec | FeedSpec) => buckets.find(({ mine }) => mine.includes(x))
  const toFire = lays.filter(({ lay }) => lay.dumpIndex === undefined && lay.fillIndex === undefined)
  let byHose = 0 // straight to the fire ground, now
  const flowOf = (s: Site) => (flow - byHose) * s.spec.demandShare
  const reserveOf = (s: Site) => limitAt(s.spec, flowOf(s)) + (flowOf(s) * spec.demand.reserve_s) / 60
  let delivered = 0
  let shortSeconds = 0
  let engine = spec.demand.firstDue?.tank_gal ?? 0
  let allReady = Infinity
  let keptReserve = true
  // each place at a site by the moment it is free again, Infinity while taken
  const dumpPlaces = spec.dumps.map((d) => Array.from({ length: d.positionCount }, (_, k) => d.ready_s + (d.positionAfter_s?.[k] ?? 0)))
  const fillPlaces = spec.fills.map((f) => Array.from({ length: f.bayCount }, (_, k) => f.ready_s + (f.bayAfter_s?.[k] ?? 0)))
  const freePlace = (places: number[], at: number): void => { places[places.indexOf(Infinity)] = at }
  // every one-lane stretch: who is inside, and since when it is empty
  const lanes = (spec.lanes ?? []).map(() => ({ inside: 0, loaded: false, freeAt: -Infinity }))
  const step = question.step ?? 1
  const stepMinutes = step / 60
  let clock = 0
  const see = (truck: Truck, place: SeenMark['place'], mark: SeenMark['mark'], at: number): void => { question.onMark?.({ truck: trucks.indexOf(truck), place, mark, at }) }
  const setOut = (truck: Truck, seconds: number, passes?: readonly LanePass[]): void => {
    truck.pieces = piecesOf(seconds, passes)
    truck.timer += truck.pieces[0]!.seconds
  }

  for (let tick = 1; clock < spec.horizon_s && clock < allReady + question.lastsAfterReady; tick++) {
    clock = tick * step
    for (const one of lays) {
      one.gives = 0
      if (clock <= one.lay.ready_s) continue
      const shared = bucketOf(one.lay)
      if (shared) {
        one.gives = shared.ranDry ? Math.min(one.lay.flow_gpm, (shared.inflow * one.lay.flow_gpm) / shared.askedAtMost) : one.lay.flow_gpm
        continue
      }
      const inflow = one.lay.inflow_gpm ?? 0
      one.gives = Math.min(one.lay.flow_gpm, one.water / stepMinutes + inflow)
      one.water = Math.max(0, one.water - Math.max(0, one.gives - inflow) * stepMinutes)
    }
    const couldGive = toFire.reduce((sum, one) => sum + one.gives, 0)
    byHose = open ? 0 : Math.min(flow, couldGive)
    for (const one of toFire) if (couldGive > 0) one.brought += (one.gives * byHose * stepMinutes) / couldGive
    delivered += byHose * stepMinutes
    // vehicles on a timer
    for (const truck of trucks) {
      truck.minutesNow = stepMinutes
      if (['queue-dump', 'queue-fill', 'standby', 'dump', 'fill', 'left'].includes(truck.doing) || truck.stopped) continue
      truck.timer -= step
      // along the pieces of its leg; before a stretch it stops, and is let in below
      while (truck.timer <= 0 && truck.pieces.length > 0) {
        const [was] = truck.pieces.splice(0, 1)
        if (was?.lane !== undefined) {
          const lane = lanes[was.lane]!
          lane.inside--
          if (lane.inside === 0) lane.freeAt = clock + truck.timer
        }
        const next = truck.pieces[0]
        if (next?.lane !== undefined) {
          truck.stopped = true
          truck.since = clock + truck.timer
          break
        }
        truck.timer += next?.seconds ?? 0
      }
      if (truck.timer > 0 || truck.stopped) continue
      const t = truck.spec
      if (truck.doing === 'away' || truck.doing === 'to-dump') { truck.doing = 'queue-dump'; truck.since = clock + truck.timer; see(truck, 'dump', 'arrived', truck.since) }
      else if (truck.doing === 'spot') { truck.doing = 'dump'; truck.minutesNow = -truck.timer / 60; see(truck, 'dump', 'dumping', clock + truck.timer) }
      else if (truck.doing === 'unspot') { freePlace(dumpPlaces[t.dumpIndex]!, clock + truck.timer); see(truck, 'dump', 'left', clock + truck.timer) }
      else if (truck.doing === 'unhook') { freePlace(fillPlaces[t.fillIndex]!, clock + truck.timer); see(truck, 'fill', 'left', clock + truck.timer) }
      if (truck.doing === 'unspot' && truck.dumpEndedAt >= (t.withdraw_s ?? Infinity)) truck.doing = 'left'
      else if (truck.doing === 'unspot' && t.rest && truck.dumpEndedAt - truck.restedAt >= t.rest.after_s) { truck.doing = 'rest'; truck.timer += t.rest.break_s }
      else if (truck.doing === 'unspot' || truck.doing === 'rest') {
        if (truck.doing === 'rest') truck.restedAt = clock + truck.timer
        truck.doing = 'to-fill'
        setOut(truck, t.toFill_s, t.lanesToFill)
      }
      else if (truck.doing === 'to-fill') { truck.doing = 'queue-fill'; truck.since = clock + truck.timer; see(truck, 'fill', 'arrived', truck.since) }
      else if (truck.doing === 'hookup') { truck.doing = 'standby'; truck.since = clock + truck.timer; see(truck, 'fill', 'hookedUp', truck.since) }
      else if (truck.doing === 'unhook') { truck.doing = 'to-dump'; setOut(truck, t.toDump_s, t.lanesToDump) }
    }
    // one-lane stretches: loaded first, and one behind the other in the same direction
    lanes.forEach((lane, index) => {
      const before = trucks.filter((x) => x.stopped && x.pieces[0]?.lane === index)
      for (const loaded of [true, false]) {
        const these = before.filter((x) => (x.doing === 'to-dump') === loaded).sort((a, b) => a.since - b.since)
        if (these.length === 0) continue
        if (!loaded && before.some((x) => x.stopped && x.doing === 'to-dump')) continue
        if (lane.inside > 0 && lane.loaded !== loaded) continue
        const from = lane.inside > 0 ? -Infinity : lane.freeAt
        for (const truck of these) {
          lane.inside++
          lane.loaded = loaded
          truck.stopped = false
          truck.timer = truck.pieces[0]!.seconds - (clock - Math.max(truck.since, from))
        }
      }
    })
    // queues: whoever came first takes a free place
    const line = trucks.filter((x) => x.doing === 'queue-dump' || x.doing === 'queue-fill').sort((a, b) => a.since - b.since)
    for (const truck of line) {
      const t = truck.spec
      const atDump = truck.doing === 'queue-dump'
      const places = atDump ? dumpPlaces[t.dumpIndex]! : fillPlaces[t.fillIndex]!
      const free = Math.min(...places)
      if (free > clock) continue
      places[places.indexOf(free)] = Infinity
      truck.doing = atDump ? 'spot' : 'hookup'
      truck.timer = (atDump ? t.dumpPosition_s : t.fillPosition_s) - (clock - Math.max(truck.since, free))
      if (truck.timer > 0) continue
      truck.doing = atDump ? 'dump' : 'standby'
      truck.minutesNow = -truck.timer / 60
      truck.since = clock + truck.timer
      see(truck, atDump ? 'dump' : 'fill', atDump ? 'dumping' : 'hookedUp', truck.since)
    }
    // filling
    const plans = ponds.map((pond, index) => {
      // of those hooked up the first begin, as many as may flow
      const flowing = pond.spec.flowingBayCount ?? pond.spec.bayCount
      let open = trucks.filter((x) => x.doing === 'fill' && x.spec.fillIndex === index).length
      for (const truck of trucks.filter((x) => x.doing === 'standby' && x.spec.fillIndex === index).sort((a, b) => a.since - b.since)) {
        if (open >= flowing) break
        truck.doing = 'fill'
        truck.minutesNow = (clock - Math.max(truck.since, pond.turnAt)) / 60
        see(truck, 'fill', 'filling', Math.max(truck.since, pond.turnAt))
        open++
      }
      const filling = trucks.filter((x) => x.doing === 'fill' && x.spec.fillIndex === index)
      const byLay = lays.filter(({ lay }) => lay.fillIndex === index)
      const added = filling.length > 0 ? byLay.reduce((sum, one) => sum + one.gives, 0) / filling.length : 0
      const own = filling.length > 0 ? pond.spec.bayRate_gpm[filling.length - 1]! : 0
      const wants = filling.map((x) => {
        const perBay = Math.min(own + added, x.spec.fillLimit_gpm)
        // the middle of the step says whether it is in the slow last part
        const middle = x.water + (perBay * x.minutesNow) / 2
        return (middle >= x.spec.usable_gal * (1 - x.spec.topUpShare) ? perBay * x.spec.topUpRateShare : perBay) * x.minutesNow
      })
      const ownPart = added > 0 ? own / (own + added) : 1
      return { filling, byLay, added, wants, ownPart, wanted: wants.reduce((a, b) => a + b, 0) * ownPart }
    })
    const sharedParts = buckets.map((bucket) => {
      const byLays = lays.reduce((sum, { lay, gives }) => sum + (bucketOf(lay) === bucket ? gives : 0), 0) * stepMinutes
      const wanted = ponds.reduce((sum, pond, index) => sum + (bucketOf(pond.spec) === bucket ? plans[index]!.wanted : 0), 0)
      bucket.water += bucket.inflow * stepMinutes - byLays
      const part = wanted > bucket.water ? Math.max(0, bucket.water) / wanted : 1
      if (part < 1 || bucket.water < 0) bucket.ranDry = true
      bucket.water = Math.max(0, bucket.water)
      return part
    })
    ponds.forEach((pond, index) => {
      const { filling, byLay, added, wants, ownPart, wanted } = plans[index]!
      const shared = bucketOf(pond.spec)
      const has = pond.water + (pond.spec.inflow_gpm ?? 0) * stepMinutes
      const part = shared ? sharedParts[buckets.indexOf(shared)]! : wanted > has ? has / wanted : 1
      let used = 0
      filling.forEach((x, k) => {
        const fromOwn = part * ownPart * wants[k]!
        const available = fromOwn + (1 - ownPart) * wants[k]!
        const given = Math.min(available, x.spec.usable_gal - x.water)
        x.water += given
        used += available > 0 ? (given * fromOwn) / available : 0
        for (const one of byLay) if (added > 0) one.brought += (given * (1 - fromOwn / available) * one.gives) / (added * filling.length)
        if (x.water < x.spec.usable_gal - 1e-9) return
        x.water = x.spec.usable_gal
        x.doing = 'unhook'
        const left = available > 0 ? (1 - given / available) * x.minutesNow * 60 : 0
        x.timer = x.spec.fillClear_s - left
        pond.turnAt = clock - left
        see(x, 'fill', 'full', pond.turnAt)
      })
      pond.drawn += used
      if (shared) { shared.water = Math.max(0, shared.water - used); return }
      pond.water = Math.min(pond.spec.usable_gal ?? Infinity, has - used)
    })
    for (const bucket of buckets) bucket.water = Math.min(bucket.holds, bucket.water)
    // dumping and drafting
    for (const site of sites) {
      const wantsOut = !open && site.state === 'pumping' ? flowOf(site) * stepMinutes : 0
      const dumping = trucks.filter((x) => x.doing === 'dump' && spec.dumps[x.spec.dumpIndex] === site.spec)
      const offers = dumping.map((x) => {
        const rates = x.spec.dumpRate_gpm
        const rateWith = (water: number) => rates[Math.min(rates.length - 1, Math.floor((1 - water / x.spec.usable_gal) * rates.length))]!
        const middle = Math.max(0, x.water - (rateWith(x.water) * x.minutesNow) / 2)
        return Math.min(x.water, rateWith(middle) * x.minutesNow)
      })
      const keeps = dumping.map((x) => 1 - (x.spec.spillShare ?? 0))
      const lain = lays.filter(({ lay }) => lay.dumpIndex !== undefined && spec.dumps[lay.dumpIndex] === site.spec)
      const byLay = lain.reduce((sum, one) => sum + one.gives, 0) * stepMinutes
      const offered = offers.reduce((sum, offer, k) => sum + offer * keeps[k]!, 0) + byLay
      // what leaks and what goes over from tanks in front in this step; an open run knows neither
      const { front, intakeLimit_gpm, leak_gpm = 0 } = site.spec
      const leaks = open ? 0 : Math.min(site.level, leak_gpm * stepMinutes)
      const roomBehind = open ? Infinity : site.spec.capacity_gal - site.level + wantsOut + leaks
      const hasFront = !open && front !== undefined
      const over = hasFront ? Math.min(front.transfer_gpm * stepMinutes, site.front + offered, roomBehind) : 0
      const room = Math.min(hasFront ? front.capacity_gal - site.front + over : roomBehind, (intakeLimit_gpm ?? Infinity) * stepMinutes)
      const part = offered > room ? room / offered : 1
      for (const one of lain) one.brought += one.gives * stepMinutes * part
      dumping.forEach((x, k) => {
        const rates = x.spec.dumpRate_gpm
        const lastRate = rates[rates.length - 1]!
        const moved = offers[k]! * part
        x.water -= moved
        if (x.water > 1e-9) return
        x.water = 0
        x.doing = 'unspot'
        x.timer = x.spec.dumpClear_s - Math.max(0, x.minutesNow - moved / (lastRate * part)) * 60
        x.dumpEndedAt = clock
        x.dumpedAt.push(clock + x.timer - x.spec.dumpClear_s)
        see(x, 'dump', 'empty', clock + x.timer - x.spec.dumpClear_s)
        site.emptied++
      })
      if (hasFront) {
        const goes = Math.min(over, site.front + offered * part)
        site.front += offered * part - goes
        site.level += goes - leaks
      } else site.level += offered * part - leaks
      site.brought += offered * part
      const flowing = flowOf(site)
      const limit = limitAt(site.spec, flowing)
      let sent = 0
      if (site.state === 'setup' && clock >= site.spec.pumpReady_s) site.state = 'waiting'
      if (site.state === 'waiting' && site.spec.demandShare > 0) {
        const full = site.level >= site.spec.capacity_gal - 1e-9
        if (full || ((site.emptied > 0 || byLay > 0) && site.level >= Math.min(site.spec.capacity_gal, reserveOf(site)))) {
          site.state = 'pumping'
          site.readyAt = clock
        }
      }
      if (!open && site.state === 'pumping') {
        if (site.level - wantsOut < limit && wantsOut > 0) {
          site.state = 'dead'
          site.losses++
        } else {
          site.level -= wantsOut
          sent = wantsOut
        }
      } else if (site.state === 'dead') {
        const enough = Math.min(site.spec.capacity_gal, limit + Math.max(1, ((site.spec.restartMargin_s ?? 30) * flowing) / 60))
        if (site.level >= enough - 1e-9 && limit + 1 <= site.spec.capacity_gal) { site.state = 'priming'; site.primeTimer = site.spec.reprime_s }
      } else if (site.state === 'priming') {
        site.primeTimer -= step
        if (site.primeTimer <= 0) site.state = 'pumping'
      }
      if (!open && (site.state === 'dead' || site.state === 'priming') && site.booster > 0) {
        sent = Math.min(site.booster, flowing * stepMinutes)
        site.booster -= sent
      }
      if (question.reserveFrom !== undefined && clock >= question.reserveFrom && site.state === 'pumping' && reserveOf(site) <= site.spec.capacity_gal) {
        if (site.level < reserveOf(site) - flowing * stepMinutes - 1e-6) keptReserve = false
      }
      delivered += sent
      // the first engine's tank covers what a site does not send until all supply is ready
      if (!open && sent === 0 && flowing > 0) {
        const due = spec.demand.firstDue
        const fromEngine = allReady === Infinity && due && clock >= due.arrive_s ? Math.min(engine, flowing * stepMinutes) : 0
        engine -= fromEngine
        delivered += fromEngine
        if (allReady !== Infinity && flowing > 0) shortSeconds += step
      }
    }
    const carrying = sites.filter((s) => s.spec.demandShare > 0)
    if (allReady === Infinity && carrying.every((s) => s.readyAt !== Infinity)) allReady = clock
    question.onStep?.(clock, sites.reduce((sum, site) => sum + site.brought, 0))
  }
  return {
    delivered,
    brought: sites.map((s) => s.brought),
    drawn: ponds.reduce((sum, p) => sum + p.drawn, 0),
    byLays: lays.map(({ brought }) => brought),
    readyAt: allReady,
    shortSeconds,
    losses: sites.reduce((sum, s) => sum + s.losses, 0),
    keptReserve,
    dumpedAt: trucks.map((x) => x.dumpedAt),
    left: trucks.map((x) => (x.doing === 'left' ? x.dumpEndedAt : undefined)),
    end: clock,
  }
}
