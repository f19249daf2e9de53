import { PlainError } from './say.mjs'

const NEEDED = [20, 9]

/** @throws PlainError when this Node is older than the framework runs on */
export function requireNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number)
  const isOld = major < NEEDED[0] || (major === NEEDED[0] && minor < NEEDED[1])
  if (isOld) {
    throw new PlainError(
      `Millrace needs Node ${NEEDED.join('.')} or newer and this is Node ${version}: install a newer Node from nodejs.org and start again.`,
    )
  }
}
