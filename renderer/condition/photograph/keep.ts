import type { Words } from '../../../core/words/en/index.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { actingHeader } from '../../acting.ts'
import { answer, Refused } from '../../api.ts'
import { reduced } from './reduce.ts'

/** What came of one file: the hash it is kept under, or why it is not. */
export type Outcome = { readonly hash: string } | { readonly why: string }

/** Sends the bytes to the ledger; answers with their hash. */
function send(photograph: Blob): Promise<{ hash: string }> {
  const headers = { 'Content-Type': photograph.type, ...actingHeader() }
  return answer(fetch('/api/photographs', { method: 'PUT', headers, body: photograph }))
}

/** Makes a file small and upright and keeps it in the ledger. */
export async function keepPhotograph(file: Blob, words: Words): Promise<Outcome> {
  const photograph = await reduced(file)
  if (!photograph.ok) return { why: photograph.problems.map(one => problemText(words, one)).join(' ') }
  try {
    return { hash: (await send(photograph.value)).hash }
  } catch (error) {
    return { why: error instanceof Refused ? error.message : words.screens.unreachable }
  }
}
