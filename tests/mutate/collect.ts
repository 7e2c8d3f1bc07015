/**
 * What a test file is given for `vitest` while mutants are judged: its tests are only written down here, so that each can be run
 * by itself, over and over. Expectations and spies are Vitest's own.
 */
import { vi as vitestOwn } from 'vitest'

export { expect } from 'vitest'

// Some expectations look for the file that Vitest runs.
Object.assign(globalThis, { __vitest_worker__: { filepath: '', config: {} } })

type Step = () => unknown

interface Group {
  readonly above: Group | null
  readonly beforeAll: Step[]
  readonly beforeEach: Step[]
  readonly afterEach: Step[]
  readonly afterAll: Step[]
}

/** A test and the groups it stands in. */
export interface Test {
  readonly group: Group
  readonly run: Step
}

const newGroup = (above: Group | null): Group => ({
  above,
  beforeAll: [],
  beforeEach: [],
  afterEach: [],
  afterAll: [],
})

let group = newGroup(null)
let tests: Test[] = []
let atEnd: Step[] = []

/** The tests that `load` writes down. */
export async function collected(load: () => Promise<unknown>): Promise<readonly Test[]> {
  group = newGroup(null)
  tests = []
  await load()
  return tests
}

const inGroup = (_title: unknown, fill: Step) => {
  const above = group
  group = newGroup(above)
  fill()
  group = above
}

const writtenDown = (_title: unknown, ...given: unknown[]) => {
  const run = given.find(one => typeof one === 'function') as Step
  tests.push({ group, run })
}

type Maker = (title: unknown, run: (...row: unknown[]) => unknown) => void
const rowOf = (row: unknown): unknown[] => (Array.isArray(row) ? row : [row])

const withVariants = (make: (title: unknown, run: Step) => void) =>
  Object.assign(make, {
    each:
      (rows: readonly unknown[]): Maker =>
      (title, run) =>
        rows.forEach(row => {
          make(title, () => run(...rowOf(row)))
        }),
    skipIf: (isSkipped: unknown) => (isSkipped ? () => undefined : make),
    runIf: (isRun: unknown) => (isRun ? make : () => undefined),
  })

export const describe = withVariants(inGroup)
export const test = withVariants(writtenDown)
export const it = test
export const beforeAll = (step: Step) => group.beforeAll.push(step)
export const beforeEach = (step: Step) => group.beforeEach.push(step)
export const afterEach = (step: Step) => group.afterEach.push(step)
export const afterAll = (step: Step) => group.afterAll.push(step)
export const onTestFinished = (step: Step) => atEnd.push(step)

/** Limits of time are the judge's, not the test's. */
export const vi = { ...vitestOwn, setConfig: () => undefined }

const groupsOf = (inner: Group | null): Group[] => (inner ? [...groupsOf(inner.above), inner] : [])

/** Runs one test with all that its groups do before and after; throws as it does. */
export async function runTest({ group, run }: Test): Promise<void> {
  const groups = groupsOf(group)
  const inner = groups.toReversed()
  atEnd = []
  const before = [...groups.flatMap(one => one.beforeAll), ...groups.flatMap(one => one.beforeEach)]
  try {
    for (const step of before) {
      const after = await step()
      if (typeof after === 'function') atEnd.push(after as Step)
    }
    await run()
  } finally {
    const after = [...inner.flatMap(one => one.afterEach), ...inner.flatMap(one => one.afterAll)]
    for (const step of [...atEnd.toReversed(), ...after]) await step()
  }
}
