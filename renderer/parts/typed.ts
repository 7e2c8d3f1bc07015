/** Text that may be left empty, as a request takes it. */
export const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim())

/** What stands for a text that is no number: below every bound, so that the request names the field. */
const noNumber = -1000

/** A number as typed, or null where nothing is. */
export function numberOrNull(text: string): number | null {
  if (text.trim() === '') return null
  const value = Number(text)
  return Number.isFinite(value) ? value : noNumber
}

/** A number that is needed; nothing typed goes as nothing, which the request names. */
export const neededNumber = (text: string): number => numberOrNull(text) ?? Number.NaN
