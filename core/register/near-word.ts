/** Words shorter than this are near to too many others to be guessed at. */
export const fewestLetters = 4

/** Whether one text becomes the other by one letter changed, left out, put in, or two neighbours swapped (Damerau 1964). */
export function isOneSlipAway(one: string, other: string): boolean {
  const [a, b] = one.length <= other.length ? [one, other] : [other, one]
  if (b.length - a.length > 1) return false
  let at = 0
  while (at < a.length && a[at] === b[at]) at += 1
  const rest = (text: string, from: number) => text.slice(from)
  if (a.length < b.length) return rest(a, at) === rest(b, at + 1)
  const swapped = a[at] === b[at + 1] && a[at + 1] === b[at] && rest(a, at + 2) === rest(b, at + 2)
  return at === a.length || rest(a, at + 1) === rest(b, at + 1) || swapped
}

/** Whether what was typed so far, with one slip in it, begins the word. */
export const mayBegin = (typed: string, word: string): boolean =>
  typed.length >= fewestLetters &&
  [typed.length - 1, typed.length, typed.length + 1].some(
    length => length <= word.length && isOneSlipAway(typed, word.slice(0, length)),
  )
