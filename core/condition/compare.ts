/** What of a condition note tells it from another. */
export interface NoteFacts {
  readonly component: string
  readonly finish: string
  readonly grade: string
  readonly earlierRepair: string
  readonly remark: string
  readonly struckReason: string | null
}

/** How a note stands to the report of the visit before: not there then, noted otherwise, or as it was. */
export type Since = 'new' | 'changed' | 'same'

const saidOf = (note: NoteFacts): string =>
  [
    note.component,
    note.finish,
    note.grade,
    note.earlierRepair,
    note.remark.toLowerCase().replace(/\s+/g, ' ').trim(),
  ].join('\n')

/** Takes the first of `rest` that `fits` out of it; true when there was one. */
function taken<T>(rest: T[], fits: (one: T) => boolean): boolean {
  const at = rest.findIndex(fits)
  if (at >= 0) rest.splice(at, 1)
  return at >= 0
}

/**
 * How each note of `now` stands to those of `before`, in the order of `now`; notes struck out say nothing. Each earlier note
 * answers for one of now: first the one that says the same, else one on the same component.
 */
export function sinceBefore(now: readonly NoteFacts[], before: readonly NoteFacts[]): (Since | null)[] {
  const rest = before.filter(note => note.struckReason === null)
  const first = now.map(note => {
    if (note.struckReason !== null) return null
    return taken(rest, other => saidOf(other) === saidOf(note)) ? ('same' as const) : undefined
  })
  return first.map((since, i) => {
    if (since !== undefined) return since
    return taken(rest, other => other.component === now[i]?.component) ? 'changed' : 'new'
  })
}
