/**
 * The event stream format of the HTML standard ("Server-sent events", sections 9.2.5 and 9.2.6), written and read.
 */
export type StreamEvent = { readonly id?: string; readonly event: string; readonly data: string }

/** An event as it is sent. @throws RangeError where id or name hold a line end: they would become fields of their own */
export function eventText({ id, event, data }: StreamEvent): string {
  for (const field of [id ?? '', event]) if (/[\r\n\0]/.test(field)) throw new RangeError(`field is "${field}", must be one line`)
  const lines = data.split(/\r\n|\r|\n/).map((line) => `data: ${line}\n`)
  return `${id === undefined ? '' : `id: ${id}\n`}event: ${event}\n${lines.join('')}\n`
}

/** Takes a stream in whatever pieces it comes, and gives the events in it. */
export class EventReader {
  #rest = ''
  #isBegun = false
  #wasReturn = false
  #data: string[] = []
  #event = ''
  #id: string | undefined

  /** Of the last event that had one. */
  lastId: string | undefined

  read(piece: string): StreamEvent[] {
    let text = piece
    if (!this.#isBegun && text !== '') {
      this.#isBegun = true
      if (text.startsWith('\uFEFF')) text = text.slice(1)
    }
    // A line end of two characters may lie on both sides of a cut.
    if (this.#wasReturn && text.startsWith('\n')) text = text.slice(1)
    if (text !== '') this.#wasReturn = text.endsWith('\r')
    const lines = (this.#rest + text).split(/\r\n|\r|\n/)
    this.#rest = lines.pop() ?? ''
    return lines.flatMap((line) => this.#line(line) ?? [])
  }

  #line(line: string): StreamEvent | undefined {
    if (line === '') return this.#dispatch()
    const at = line.indexOf(':')
    if (at === 0) return undefined
    const [field, value] = at < 0 ? [line, ''] : [line.slice(0, at), line.slice(at + 1).replace(/^ /, '')]
    if (field === 'data') this.#data.push(value)
    else if (field === 'event') this.#event = value
    else if (field === 'id' && !value.includes('\0')) this.#id = value
    return undefined
  }

  #dispatch(): StreamEvent | undefined {
    const [data, event, id] = [this.#data, this.#event || 'message', this.#id]
    this.#data = []
    this.#event = ''
    this.#id = undefined
    this.lastId = id ?? this.lastId
    return data.length === 0 ? undefined : { ...(id !== undefined && { id }), event, data: data.join('\n') }
  }
}
