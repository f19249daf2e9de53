import { PlainError } from './say.mjs'

const PORTS_TRIED = 50

function listenOn(server, host, port) {
  return new Promise((resolve, reject) => {
    const refuse = (error) => reject(error)
    server.once('error', refuse)
    server.listen({ host, port }, () => {
      server.off('error', refuse)
      resolve(server.address().port)
    })
  })
}

/**
 * Opens a server on the wanted port; if that is taken and need not be that one, on the next free one.
 *
 * @returns the port
 * @throws PlainError if there is none to be had
 */
export async function listen(server, host, { port, isFixed }) {
  for (let tried = port; ; tried += 1) {
    try {
      return await listenOn(server, host, tried)
    } catch (error) {
      const isTaken = error.code === 'EADDRINUSE'
      if (isTaken && !isFixed && tried < port + PORTS_TRIED) continue
      if (isTaken) throw new PlainError(`Port ${tried} is already in use: stop what uses it or set PORT to another number.`)
      throw new PlainError(`Millrace cannot listen on ${host} port ${tried}: ${error.message}.`)
    }
  }
}
