import { mintId } from '../_client/mint-id'
import { say } from '../_text'

export type Created = { readonly id: string } | { readonly sentence: string }

/** Keeps a new district of that name on the server; else a sentence says why not. */
export async function createDistrict(name: string): Promise<Created> {
  const id = mintId()
  try {
    const response = await fetch('/api/documents', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ doc: { id, name } }),
    })
    if (response.ok) return { id }
    const answer: unknown = await response.json()
    return { sentence: sentenceOf(answer) ?? say('home.not-created') }
  } catch {
    return { sentence: say('home.unreachable') }
  }
}

function sentenceOf(answer: unknown): string | undefined {
  if (typeof answer !== 'object' || answer === null || !('error' in answer)) return undefined
  const { error } = answer
  return typeof error === 'object' && error !== null && 'sentence' in error && typeof error.sentence === 'string' ? error.sentence : undefined
}
