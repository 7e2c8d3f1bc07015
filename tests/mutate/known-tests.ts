import { collected, runTest, type Test } from './collect.ts'
import type { Imports } from './imports.ts'
import { load } from './loader.ts'
import { passed, switchTo } from './switch.ts'
import type { Mutant } from './switched.ts'

/** One test as it can be run, with the steps it goes where no mutant stands. */
export interface Runnable {
  readonly name: string
  readonly file: string
  readonly test: Test
  readonly steps: number
}

/** A test as it was seen to pass, the mutants it reaches, and what it costs to ask it. */
interface Known extends Runnable {
  readonly reached: ReadonlySet<number>
  readonly ms: number
}

/** All tests near some mutants. */
export interface KnownTests {
  readonly count: number
  /** Tests that do not pass by themselves: no verdict rests on them. */
  readonly leftOut: readonly string[]
  /** The tests that a mutant can fail: those of `first` among them, then the nearest of each test file in turn. */
  readonly of: (mutant: Mutant, first: readonly Runnable[]) => AsyncIterable<Runnable>
}

/** The numbers of the mutants of one file, which follow on one another. */
export interface MutantsOfFile {
  readonly first: number
  readonly last: number
}

/** How many test files are loaded anew for one mutant. Loading takes time, and what was loaded stays in memory. */
const mostAnew = 10

/** Longer than any test takes; what is late waits for something that does not come. */
const latest = 60_000

/** Whether a test fails; one that never ends fails too. */
export async function fails(test: Test): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, no) => {
    timer = setTimeout(() => no(new Error('late')), latest)
  })
  try {
    await Promise.race([runTest(test), late])
    return false
  } catch {
    return true
  } finally {
    clearTimeout(timer)
  }
}

const byReach = (a: Known, b: Known) => a.reached.size * (a.ms + 1) - b.reached.size * (b.ms + 1)

/** One of each file, then the next of each: what one file does not look at, another may. */
function inTurn<T extends Runnable>(tests: readonly T[]): T[] {
  const files = [...Map.groupBy(tests, ({ file }) => file).values()]
  const longest = Math.max(0, ...files.map(({ length }) => length))
  return Array.from({ length: longest }, (_, turn) =>
    files.flatMap(file => file.slice(turn, turn + 1)),
  ).flat()
}

const nameOf = (file: string, at: number) => `${file} ${at + 1}`

/** A test that fails: what a file that no longer loads stands for. */
const unloaded: Test = {
  group: { above: null, beforeAll: [], beforeEach: [], afterEach: [], afterAll: [] },
  run: () => Promise.reject(new Error('does not load')),
}

/** Runs every test of the files once without a mutant. */
export async function knownTests(
  root: string,
  files: readonly string[],
  imports: Imports,
  mutantsOf: (file: string) => MutantsOfFile,
): Promise<KnownTests> {
  const known: Known[] = []
  const leftOut: string[] = []
  const atLoad = new Set<number>()
  for (const file of files) {
    switchTo(-1)
    const tests = await collected(() => load(root, file))
    for (const id of passed().reached) atLoad.add(id)
    for (const [at, test] of tests.entries()) {
      switchTo(-1)
      const start = performance.now()
      const name = nameOf(file, at)
      if (await fails(test)) leftOut.push(name)
      else known.push({ name, file, test, ...passed(), ms: performance.now() - start })
    }
  }
  known.sort(byReach)

  /** The test files near a file: those with a test that passes through it (of constants, all that load it), those that load least first. */
  const filesNear = (path: string): string[] => {
    const { first, last } = mutantsOf(path)
    const loading = known.filter(({ file }) => imports.reachedFrom(file).has(path))
    const through = loading.filter(({ reached }) => [...reached].some(id => id >= first && id <= last))
    const size = (file: string) => imports.reachedFrom(file).size
    const near = (through.length > 0 ? through : loading).map(({ file }) => file)
    return [...new Set(near)].toSorted((a, b) => size(a) - size(b)).slice(0, mostAnew)
  }

  /** A mutant that stands while its file is loaded: everything that rests on the file is loaded anew under it, for a few test files. */
  async function* loadedAnew(
    { id, file: path }: Mutant,
    first: string | undefined,
  ): AsyncGenerator<Runnable> {
    const near = filesNear(path)
    for (const file of [...near.filter(one => one === first), ...near.filter(one => one !== first)]) {
      switchTo(id)
      const isTouched = (other: string) => imports.reachedFrom(other).has(path)
      const tests = await collected(() => load(root, file, isTouched)).catch(() => [unloaded])
      for (const [at, test] of tests.entries()) {
        const before = known.find(({ name }) => name === nameOf(file, at))
        if (test === unloaded || before)
          yield { name: nameOf(file, at), file, test, steps: before?.steps ?? 0 }
      }
    }
  }

  async function* of(mutant: Mutant, first: readonly Runnable[]) {
    if (atLoad.has(mutant.id)) return yield* loadedAnew(mutant, first[0]?.file)
    const near = inTurn(known.filter(({ reached }) => reached.has(mutant.id)))
    const names = new Set(first.map(({ name }) => name))
    // By name: what was loaded anew for another mutant is not asked again.
    yield* first.flatMap(({ name }) => near.filter(one => one.name === name))
    yield* near.filter(({ name }) => !names.has(name))
  }
  return { count: known.length, leftOut, of }
}
