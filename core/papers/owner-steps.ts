import type { WorkingStep } from './contents.ts'

/** Steps of a price that are the shop's own affair: what it paid, what it adds, what it supposed and looked up. */
const shopsOwn = new Set([
  'trainsSupposed',
  'bookHours',
  'furtherHours',
  'markup',
  'storesPrice',
  'outsideMarkup',
])

/** The working as a paper for the owner shows it: hours and their rate, pieces and the price of each, fees. All of it stands on the shop's screens. */
export const ownerSteps = (working: readonly WorkingStep[]): WorkingStep[] =>
  working.filter(({ code }) => !shopsOwn.has(code))
