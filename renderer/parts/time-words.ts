import { hoursAndMinutes } from '../../core/labour/minutes.ts'
import type { Words } from '../../core/words/en/index.ts'

/** Minutes in words: `1 h 05 min`. */
export function timeWords(words: Words, minutes: number): string {
  const { hours, minutes: over } = hoursAndMinutes(minutes)
  return words.bench.time(hours, over)
}
