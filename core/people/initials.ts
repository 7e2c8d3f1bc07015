/** The longest initials, in characters. */
export const longestInitials = 4

/** The first letters of the first and the last word of a name, as capitals; of a single word its first letter. */
export function initialsOf(name: string): string {
  const words = name.trim().split(/\s+/)
  const ends = words.length > 1 ? [words[0], words.at(-1)] : words
  return ends.map(word => [...(word ?? '')][0]?.toUpperCase() ?? '').join('')
}

/** The initials that were entered for a person; where none were, those of the name. */
export const shownInitials = ({ name, initials }: { name: string; initials: string }): string =>
  initials || initialsOf(name)
