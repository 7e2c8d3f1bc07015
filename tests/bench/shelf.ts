import { shelfVerdict } from '../../core/run-in/verdict.ts'
import { bad, good, simulated, type Truth } from '../core/run-in/shelf-simulator.ts'

const seeds = 2000

/** How often clocks of a truth were told each verdict. */
function verdictsOf(truth: Truth): Readonly<Record<string, number>> {
  const told: Record<string, number> = {}
  for (let seed = 1; seed <= seeds; seed++) {
    const { verdict } = shelfVerdict(simulated(seed, truth).input)
    told[verdict] = (told[verdict] ?? 0) + 1
  }
  return told
}

/** Simulated shelves of every truth, and what was told of them: bad clocks that passed, and the share of good ones that were held. */
export async function shelf(): Promise<object> {
  const told = Object.fromEntries([...good, ...bad].map(truth => [truth, verdictsOf(truth)]))
  const passed = (truths: readonly Truth[]) =>
    truths.reduce((sum, truth) => sum + (told[truth]?.['may-pass'] ?? 0), 0)
  const badPassed = passed(bad)
  const goodHeld = 1 - passed(good) / (seeds * good.length)
  if (badPassed > 0 || goodHeld > 0.03) process.exitCode = 1
  return { logs: seeds * (good.length + bad.length), badPassed, goodHeld, told }
}
