import * as queryWords from 'drizzle-orm'

/** Raised where a mutant made a loop that does not end. */
class Endless extends Error {}

/** Which mutant stands, which were reached, and how many steps may still be gone. */
const state = { on: -1, reached: new Set<number>(), steps: 0, most: Number.POSITIVE_INFINITY }

/** Whether the mutant of that number stands; every place with a mutant asks. */
function isOn(id: number): boolean {
  state.reached.add(id)
  state.steps += 1
  if (state.steps > state.most) throw new Endless('more steps than the test needs by far')
  return id === state.on
}

Object.assign(globalThis, { $mutant: isOn, $queryWords: queryWords })

/** From now on the mutant of that number stands (none: −1), for at most so many steps, and nothing was reached yet. */
export function switchTo(on: number, most = Number.POSITIVE_INFINITY): void {
  Object.assign(state, { on, most, steps: 0, reached: new Set() })
}

/** The mutants reached since, and the steps gone. */
export const passed = () => ({ reached: state.reached, steps: state.steps })
