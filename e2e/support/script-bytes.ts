import { get } from 'node:http'

type Answer = { readonly bytes: number; readonly encoding: string | undefined }

/** Asks as a browser does that takes packed answers; `bytes` are those that came over the wire, packed as they were. */
function ask(address: string): Promise<Answer> {
  return new Promise((resolve, reject) => {
    get(address, { headers: { 'accept-encoding': 'gzip, br', accept: '*/*' } }, (answer) => {
      const parts: Buffer[] = []
      answer.on('data', (part: Buffer) => parts.push(part))
      answer.on('error', reject)
      answer.on('end', () => {
        if (answer.statusCode !== 200) reject(new Error(`${address} answered ${answer.statusCode}`))
        else resolve({ bytes: parts.reduce((sum, { length }) => sum + length, 0), encoding: answer.headers['content-encoding'] })
      })
    }).on('error', reject)
  })
}

/**
 * Script that a page has a browser fetch before it asks for anything by itself: that of its tags, of its preloads, and that which its
 * components are in, which stands in the data beside them.
 *
 * @returns each file with its bytes over the wire
 * @throws Error for a file that does not come packed, or a page that names none
 */
export async function firstScripts(server: string, page: string): Promise<Map<string, number>> {
  const html = await (await fetch(server + page, { headers: { accept: 'text/html' } })).text()
  // What is for browsers without modules alone no browser of today fetches.
  const asked = html.replace(/<script[^>]*\snomodule\b[^>]*>/gi, '')
  const files = [...new Set([...asked.matchAll(/static\/chunks\/[\w~.%-]+\.js/g)].map(([found]) => `/_next/${found}`))]
  if (files.length === 0) throw new Error(`${page} names no script`)
  const sizes = await Promise.all(files.map(async (file) => {
    const { bytes, encoding } = await ask(server + file)
    // A small file is not worth packing.
    if (encoding === undefined && bytes > 2000) throw new Error(`${file} of ${bytes} bytes does not come packed`)
    return [file, bytes] as const
  }))
  return new Map(sizes)
}
