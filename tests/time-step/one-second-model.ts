import type { DumpSpec, ShuttleSpec, TenderSpec } from '@/lib/shuttle/spec'

/*
 * A second opinion on the shuttle: plain one-second steps, no events, no closed forms.
 * It is slow on purpose and shares nothing with the simulation it checks except the
 * type of its input. Everything is looked at every second, in one fixed order:
 * clock and demand, vehicles on a timer, filling, dumping, pumpers, fire ground.
 */

type Doing = 'away' | 'queue-dump' | 'spot' | 'dump' | 'unspot' | 'to-fill' | 'queue-fill' | 'hookup' | 'fill' | 'unhook' | 'to-dump' | 'left'

type Truck = {
  spec: TenderSpec
  doing: Doing
  timer: number // seconds left of what it does, below 0: time already spent on the next thing
  minutesNow: number // minutes of this step in which its water can run
  since: number // when it joined the queue it stands in
  water: number
  dumpedAt: number[]
  dumpEndedAt: number
}

type Site = {
  spec: DumpSpec
  level: number
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
}

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
  }))
  const sites: Site[] = spec.dumps.map((d) => ({
    spec: d, level: 0, brought: 0, emptied: 0, state: 'setup', primeTimer: 0, booster: d.booster_gal, readyAt: Infinity, losses: 0, lowestSteady: Infinity,
  }))
  const ponds = spec.fills.map((f) => ({ spec: f, water: f.usable_gal ?? Infinity, drawn: 0 }))
  const flowOf = (s: Site) => flow * s.spec.demandShare
  const reserveOf = (s: Site) => limitAt(s.spec, flowOf(s)) + (flowOf(s) * spec.demand.reserve_s) / 60
  let delivered = 0
  let shortSeconds = 0
  let engine = spec.demand.firstDue?.tank_gal ?? 0
  let allReady = Infinity
  let keptReserve = true
  // each place at a site by the moment it is free again, Infinity while taken
  const dumpPlaces = spec.dumps.map((d) => Array.from({ length: d.positionCount }, () => d.ready_s))
  const fillPlaces = spec.fills.map((f) => Array.from({ length: f.bayCount }, () => f.ready_s))
  const freePlace = (places: number[], at: number): void => { places[places.indexOf(Infinity)] = at }
  const step = question.step ?? 1
  const stepMinutes = step / 60
  let clock = 0

  for (let tick = 1; clock < spec.horizon_s && clock < allReady + question.lastsAfterReady; tick++) {
    clock = tick * step
    // vehicles on a timer
    for (const truck of trucks) {
      truck.minutesNow = stepMinutes
      if (['queue-dump', 'queue-fill', 'dump', 'fill', 'left'].includes(truck.doing)) continue
      truck.timer -= step
      if (truck.timer > 0) continue
      const t = truck.spec
      if (truck.doing === 'away' || truck.doing === 'to-dump') { truck.doing = 'queue-dump'; truck.since = clock + truck.timer }
      else if (truck.doing === 'spot') { truck.doing = 'dump'; truck.minutesNow = -truck.timer / 60 }
      else if (truck.doing === 'unspot') freePlace(dumpPlaces[t.dumpIndex]!, clock + truck.timer)
      else if (truck.doing === 'unhook') freePlace(fillPlaces[t.fillIndex]!, clock + truck.timer)
      if (truck.doing === 'unspot' && truck.dumpEndedAt >= (t.withdraw_s ?? Infinity)) truck.doing = 'left'
      else if (truck.doing === 'unspot') { truck.doing = 'to-fill'; truck.timer += t.toFill_s }
      else if (truck.doing === 'to-fill') { truck.doing = 'queue-fill'; truck.since = clock + truck.timer }
      else if (truck.doing === 'hookup') { truck.doing = 'fill'; truck.minutesNow = -truck.timer / 60 }
      else if (truck.doing === 'unhook') { truck.doing = 'to-dump'; truck.timer += t.toDump_s }
    }
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
      truck.doing = atDump ? 'dump' : 'fill'
      truck.minutesNow = -truck.timer / 60
    }
    // filling
    ponds.forEach((pond, index) => {
      const filling = trucks.filter((x) => x.doing === 'fill' && x.spec.fillIndex === index)
      const wants = filling.map((x) => {
        const perBay = Math.min(pond.spec.bayRate_gpm[filling.length - 1]!, x.spec.fillLimit_gpm)
        // the middle of the step says whether it is in the slow last part
        const middle = x.water + (perBay * x.minutesNow) / 2
        return (middle >= x.spec.usable_gal * (1 - x.spec.topUpShare) ? perBay * x.spec.topUpRateShare : perBay) * x.minutesNow
      })
      const wanted = wants.reduce((a, b) => a + b, 0)
      const has = pond.water + (pond.spec.inflow_gpm ?? 0) * stepMinutes
      const part = wanted > has ? has / wanted : 1
      let used = 0
      filling.forEach((x, k) => {
        const available = part * wants[k]!
        const given = Math.min(available, x.spec.usable_gal - x.water)
        x.water += given
        used += given
        if (x.water < x.spec.usable_gal - 1e-9) return
        x.water = x.spec.usable_gal
        x.doing = 'unhook'
        x.timer = x.spec.fillClear_s - (available > 0 ? (1 - given / available) * x.minutesNow * 60 : 0)
      })
      pond.drawn += used
      pond.water = Math.min(pond.spec.usable_gal ?? Infinity, has - used)
    })
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
      const offered = offers.reduce((sum, offer, k) => sum + offer * keeps[k]!, 0)
      const room = open ? Infinity : site.spec.capacity_gal - site.level + wantsOut
      const part = offered > room ? room / offered : 1
      dumping.forEach((x, k) => {
        const rates = x.spec.dumpRate_gpm
        const lastRate = rates[rates.length - 1]!
        const moved = offers[k]! * part
        x.water -= moved
        if (x.water > 1e-9) return
        x.water = 0
        x.doing = 'unspot'
        x.timer = x.spec.dumpClear_s - (part < 1 ? 0 : Math.max(0, x.minutesNow - moved / lastRate) * 60)
        x.dumpEndedAt = clock
        x.dumpedAt.push(clock + x.timer - x.spec.dumpClear_s)
        site.emptied++
      })
      site.level += offered * part
      site.brought += offered * part
      const flowing = flowOf(site)
      const limit = limitAt(site.spec, flowing)
      let sent = 0
      if (site.state === 'setup' && clock >= site.spec.pumpReady_s) site.state = 'waiting'
      if (site.state === 'waiting' && site.spec.demandShare > 0) {
        const full = site.level >= site.spec.capacity_gal - 1e-9
        if (full || (site.emptied > 0 && site.level >= Math.min(site.spec.capacity_gal, reserveOf(site)))) {
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
      if (!open && sent === 0 && site.spec.demandShare > 0) {
        const due = spec.demand.firstDue
        const fromEngine = allReady === Infinity && due && clock >= due.arrive_s ? Math.min(engine, flowing * stepMinutes) : 0
        engine -= fromEngine
        delivered += fromEngine
        if (allReady !== Infinity && flowing > 0) shortSeconds += step
      }
    }
    const carrying = sites.filter((s) => s.spec.demandShare > 0)
    if (allReady === Infinity && carrying.every((s) => s.readyAt !== Infinity)) allReady = clock
  }
  return {
    delivered,
    brought: sites.map((s) => s.brought),
    drawn: ponds.reduce((sum, p) => sum + p.drawn, 0),
    readyAt: allReady,
    shortSeconds,
    losses: sites.reduce((sum, s) => sum + s.losses, 0),
    keptReserve,
    dumpedAt: trucks.map((x) => x.dumpedAt),
    left: trucks.map((x) => (x.doing === 'left' ? x.dumpEndedAt : undefined)),
    end: clock,
  }
}
