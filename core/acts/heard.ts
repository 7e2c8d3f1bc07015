/** What was heard at a time on the dial, told apart. */
interface HeardApart {
  readonly hour: { readonly shown: number; readonly counted: number } | null
  readonly half: number | null
  readonly quarter: { readonly which: 1 | 2 | 3; readonly right: boolean } | null
}

const fourthQuarterNotes = 16

/**
 * What an older log says, a time on the dial `HH:MM` and all blows and notes heard then, told apart: more than sixteen at the hour had the notes of
 * the fourth quarter before it, eight at the half hour were the second quarter.
 */
export function heardApart(heardAt: string, blows: number | null): HeardApart {
  const nothing: HeardApart = { hour: null, half: null, quarter: null }
  const [, hours = '', minutes] = /^(\d{2}):(\d{2})$/.exec(heardAt) ?? []
  if (blows === null || minutes === undefined) return nothing
  if (minutes === '00') {
    const counted = blows > fourthQuarterNotes ? blows - fourthQuarterNotes : blows
    return { ...nothing, hour: { shown: ((Number(hours) + 11) % 12) + 1, counted } }
  }
  if (minutes === '15') return { ...nothing, quarter: { which: 1, right: blows === 4 } }
  if (minutes === '45') return { ...nothing, quarter: { which: 3, right: blows === 12 } }
  if (minutes !== '30') return nothing
  return blows === 8 ? { ...nothing, quarter: { which: 2, right: true } } : { ...nothing, half: blows }
}
