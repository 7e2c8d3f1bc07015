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
const mostAnew = 5

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

  /** Whether a test passes through the mutant's file; where none does, as in a file of constants, all that load it may notice. */
  const passesThrough = ({ first, last }: MutantsOfFile) => {
    const through = known.filter(({ reached }) => [...reached].some(id => id >= first && id <= last))
    return new Set((through.length > 0 ? through : known).map(({ name }) => name))
  }

  /** A mutant that stands while its file is loaded: everything that rests on the file is loaded anew under it, for a few test files. */
  async function* loadedAnew(mutant: Mutant, first: string | undefined): AsyncGenerator<Runnable> {
    const isTouched = (path: string) => imports.reachedFrom(path).has(mutant.file)
    const asked = passesThrough(mutantsOf(mutant.file))
    const own = known.filter(({ file, name }) => asked.has(name) && isTouched(file))
    const near = [...new Set(own.map(({ file }) => file))]
    for (const file of [...near.filter(one => one === first), ...near.filter(one => one !== first)].slice(
      0,
      mostAnew,
    )) {
      switchTo(mutant.id)
      const tests = await collected(() => load(root, file, isTouched)).catch(() => [unloaded])
      for (const [at, test] of tests.entries()) {
        const before = own.find(({ name }) => name === nameOf(file, at))
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
