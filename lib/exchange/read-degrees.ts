import type { Point } from '../geo'

export type Axis = 'lat' | 'lon'
/** Degrees, or why the text is none: not a coordinate, a letter of the other axis, or beyond what the axis has. */
export type ReadDegrees = { readonly degrees: number } | { readonly wrong: 'not-a-coordinate' | 'other-axis' | 'projected' | 'range' }

const most = { lat: 90, lon: 180 } as const
const letters = { lat: 'NS', lon: 'EW' } as const
/** Degrees, minutes and seconds with any of the signs in use, or spaces, between them; N, S, E or W before or after. */
const pattern = /^([NSEWO])?\s*([-+])?\s*(\d+(?:\.\d+)?)\s*(?:°|º|d|deg|\s|$)?\s*(?:(\d+(?:\.\d+)?)\s*(?:'|′|’|m|\s|$)?\s*)?(?:(\d+(?:\.\d+)?)\s*(?:"|″|”|''|′′|s)?)?\s*([NSEWO])?$/i

/**
 * Reads one coordinate: `44.0512`, `44,0512` with a decimal comma, `44° 3.072' N`, `W 73 12 15`.
 *
 * @returns degrees, north and east positive
 */
export function readDegrees(text: string, axis: Axis, decimal: '.' | ','): ReadDegrees {
  const plain = text.trim().replace(/[−–]/g, '-').replace(/[\u00a0\u202f\u2009]/g, ' ')
  const match = pattern.exec(decimal === ',' ? plain.replaceAll(',', '.') : plain)
  if (!match) return { wrong: 'not-a-coordinate' }
  const [, before, sign, d = '', m, s, after] = match
  const letter = (before ?? after)?.toUpperCase().replace('O', 'W')
  if (before !== undefined && after !== undefined) return { wrong: 'not-a-coordinate' }
  if (letter !== undefined && !letters[axis].includes(letter)) return { wrong: 'other-axis' }
  // A fraction belongs to the last part alone, and a sign beside a letter says the same thing twice or not at all.
  if ((m !== undefined && d.includes('.')) || (s !== undefined && m?.includes('.')) || Number(m ?? 0) >= 60 || Number(s ?? 0) >= 60) return { wrong: 'not-a-coordinate' }
  if (letter !== undefined && sign === '-') return { wrong: 'not-a-coordinate' }
  const size = Number(d) + Number(m ?? 0) / 60 + Number(s ?? 0) / 3600
  const degrees = (sign === '-' || letter === 'S' || letter === 'W' ? -size : size) + 0
  if (size > 360) return { wrong: 'projected' }
  return size > most[axis] ? { wrong: 'range' } : { degrees }
}

/** Reads both in one text, latitude first unless letters say otherwise: `44.0512, -73.2041`, `44°3'4"N 73°12'15"W`. */
export function readPair(text: string, decimal: '.' | ','): Point | { readonly wrong: 'not-a-coordinate' | 'other-axis' | 'projected' | 'range' } {
  const halves = halvesOf(text.trim(), decimal)
  if (!halves) return { wrong: 'not-a-coordinate' }
  const [first, second] = /[EW]/i.test(halves[0]) ? [halves[1], halves[0]] : halves
  const lat = readDegrees(first, 'lat', decimal)
  const lon = readDegrees(second, 'lon', decimal)
  if ('wrong' in lat) return lat
  return 'wrong' in lon ? lon : { lat: lat.degrees, lon: lon.degrees }
}

function halvesOf(text: string, decimal: '.' | ','): [string, string] | undefined {
  const parts = text.split(decimal === ',' ? /\s*[;/]\s*|,\s+/ : /\s*[,;/]\s*/)
  const [one, two] = parts
  if (parts.length === 2 && one && two) return [one, two]
  const lettered = /^(.*?\d.*?[NSEW])\s+(.+)$/i.exec(text) ?? /^([NSEW].*?)\s+([NSEW].*)$/i.exec(text) ?? /^(\S+)\s+(\S+)$/.exec(text)
  return lettered?.[1] && lettered[2] ? [lettered[1], lettered[2]] : undefined
}
