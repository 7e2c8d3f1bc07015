import type { Words } from '../../../core/words/en/index.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { actingHeader } from '../../acting.ts'
import { answer, Refused } from '../../api.ts'
import { untilAnswered } from '../../parts/sent.ts'
import { reduced } from './reduce.ts'

/** What came of one file: the hash it is kept under, or why it is not. */
export type Outcome = { readonly hash: string } | { readonly why: string }

/** Sends the bytes to the ledger until it answers with their hash: the same bytes are kept once, however often they come. */
function send(photograph: Blob): Promise<{ hash: string }> {
  const headers = { 'Content-Type': photograph.type, ...actingHeader() }
  const sent = { method: 'PUT', headers, body: photograph }
  return untilAnswered(() => answer(fetch('/api/photographs', sent)))
}

/** Makes a file small and upright and keeps it in the ledger. */
export async function keepPhotograph(file: Blob, words: Words): Promise<Outcome> {
  const photograph = await reduced(file)
  if (!photograph.ok) return { why: photograph.problems.map(one => problemText(words, one)).join(' ') }
  try {
    return { hash: (await send(photograph.value)).hash }
  } catch (error) {
    return { why: error instanceof Refused ? error.message : words.condition.unanswered }
  }
}
