/** The parts of the shop by which acts are named, `shelf.read` is one of the shelf: what the day book can be narrowed to. */
export const dayBookAreas = [
  'counter',
  'estimates',
  'bench',
  'shelf',
  'accounts',
  'papers',
  'stores',
  'register',
  'shop',
] as const

export type DayBookArea = (typeof dayBookAreas)[number]
