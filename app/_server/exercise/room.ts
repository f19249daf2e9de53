import { newsFor, seenFrom, seesMap, tenderPoints, wholeViewOf, type WholeView } from '@/lib/exercise'
import { idOfNumber, type SeatAnswer, type SeatEventName } from '@/app/_seat/seat-messages'
import type { Grant } from '../../_devices/devices'
import type { SeatScope } from '../../_devices/scope'
import { onChanged, tellChanged } from '../live/changes'
import type { Outlet } from '../live/event-stream'
import type { Database } from '../open-database'
import { readRunning, sessionAt, type Running } from './running'
import { personAt, seatInfo, siteNameOf } from './seat-info'

/** How often the seats are told how things stand while the clock runs. */
const TICK_ms = 500

/** `isWelcome`: it has been told from where it begins; what comes about before that, its welcome holds. */
type Member = { grant: Grant<SeatScope>; outlet: Outlet; isWelcome: boolean; by: string; place: number; number: number; info: string; answer: string }

/**
 * The seats of one exercise that listen now. What they are told is read from the database and worked out; nothing is
 * held here that a restart would lose.
 */
export class Room {
  readonly #members = new Set<Member>()
  #running: Running | undefined
  /** As all were told it last: what an act had read meanwhile is still to be told. */
  #told: Running | undefined
  #turn: Promise<void> = Promise.resolve()
  #timer: NodeJS.Timeout | undefined
  #stop: (() => void) | undefined

  constructor(readonly exerciseId: string, readonly open: () => Promise<Database>, readonly now = Date.now) {}

  /** Grants whose seat is taken by a device at this moment. */
  get present(): ReadonlySet<string> {
    return new Set([...this.#members].map(({ grant }) => grant.id))
  }

  streamsOf = (grantId: string): number => [...this.#members].filter(({ grant }) => grant.id === grantId).length
  get size(): number {
    return this.#members.size
  }

  /**
   * A seat begins to listen: it hears all after the number it has, and then what comes.
   *
   * @param after number of the last news it has; 0 for none
   * @returns how it leaves
   */
  async join(grant: Grant<SeatScope>, outlet: Outlet, after: number): Promise<() => void> {
    const member: Member = { grant, outlet, isWelcome: false, by: '', place: 0, number: 0, info: '', answer: '' }
    this.#stop ??= onChanged(`document:${this.exerciseId}`, () => void this.look())
    this.#members.add(member)
    await this.#inTurn(async () => {
      await this.#read()
      if (this.#running) this.#welcome(member, after)
      this.#tellAll()
    })
    tellChanged(`seats:${this.exerciseId}`)
    return () => {
      this.#members.delete(member)
      this.#keepTime()
      tellChanged(`seats:${this.exerciseId}`)
      if (this.#members.size > 0) return
      this.#stop?.()
      this.#stop = undefined
    }
  }

  /** Looks whether something came about, and tells it. */
  look = (): Promise<void> => this.#inTurn(async () => {
    await this.#read()
    if (this.#running !== this.#told) this.#tellAll()
  })

  /** The exercise as it stands now. */
  async current(): Promise<Running | undefined> {
    await this.#inTurn(() => this.#read())
    return this.#running
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    this.#turn = this.#turn.then(work).catch((error: unknown) => { console.error(error) })
    return this.#turn
  }

  async #read(): Promise<void> {
    this.#running = await readRunning(await this.open(), this.exerciseId, this.#running)
  }

  #welcome(member: Member, after: number): void {
    const running = this.#running!
    member.by = personAt(member.grant, siteNameOf(running, member.grant.scope.siteId))
    const before = running.happenings.filter((one) => this.#newsOf(member, one) !== undefined).length
    // A number that is not there yet is of a database that is no more: all is told again.
    const from = after <= before ? after : 0
    this.#send(member, 'begin', { after: from })
    this.#tellInfo(member)
    this.#tellNews(member, from)
    this.#send(member, 'ready', {})
    member.isWelcome = true
  }

  #newsOf(member: Member, one: Running['happenings'][number]) {
    return newsFor(one, member.grant.scope, member.by, (injectId) => this.#running?.exercise.injects.find(({ id }) => id === injectId)?.told)
  }

  #tellAll(): void {
    this.#told = this.#running
    for (const member of this.#members) {
      if (this.#running) {
        if (!member.isWelcome) continue
        this.#tellInfo(member)
        this.#tellNews(member)
      } else {
        this.#send(member, 'gone', {})
        member.outlet.close()
      }
    }
    this.#tellNow()
    this.#keepTime()
  }

  #tellInfo(member: Member): void {
    const info = JSON.stringify(seatInfo(this.#running!, member.grant))
    if (info === member.info) return
    member.info = info
    member.outlet.send({ event: 'seat', data: info })
  }

  #tellNews(member: Member, from = 0): void {
    const { happenings } = this.#running!
    for (; member.place < happenings.length; member.place += 1) {
      const news = this.#newsOf(member, happenings[member.place]!)
      if (!news) continue
      member.number += 1
      if (member.number > from) this.#send(member, 'news', news, idOfNumber(member.number))
    }
  }

  /** How things stand, to each seat what it knows; worked out once for all, and once for each kind of seat. */
  #tellNow(): void {
    const now_ms = this.now()
    const session = this.#running && sessionAt(this.#running, now_ms)
    if (!session || this.#members.size === 0) return
    const whole = wholeViewOf(session)
    const made = new Map<string, string>()
    for (const member of this.#members) {
      if (!member.isWelcome) continue
      const { role, siteId } = member.grant.scope
      const key = `${role} ${siteId ?? ''}`
      const answer = made.get(key) ?? JSON.stringify(answerFor(whole, session.clock_s, role, siteId, () => tenderPoints(session.now.world.bundle, whole.tenders, session.now.world.conditions)))
      made.set(key, answer)
      if (answer === member.answer) continue
      member.answer = answer
      member.outlet.send({ event: 'now', data: answer })
    }
  }

  #keepTime(): void {
    const { clock, endedAt_s } = this.#running?.exercise ?? {}
    const isWanted = this.#members.size > 0 && clock?.isRunning === true && endedAt_s === undefined
    if (isWanted && !this.#timer) {
      this.#timer = setInterval(() => { this.#tellNow() }, TICK_ms)
      this.#timer.unref()
    }
    if (isWanted || !this.#timer) return
    clearInterval(this.#timer)
    this.#timer = undefined
  }

  #send(member: Member, event: SeatEventName, data: unknown, id?: string): void {
    member.outlet.send({ event, data: JSON.stringify(data), ...(id !== undefined && { id }) })
  }
}

const answerFor = (whole: WholeView, clock_s: number, role: SeatScope['role'], siteId: string | undefined, points: () => SeatAnswer['points']): SeatAnswer =>
  ({ clock_s, view: seenFrom(whole, role, siteId), ...(seesMap(role) && { points: points() }) })
