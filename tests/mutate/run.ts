/**
 * `npm run mutate -- FOLDER …`: changes the program in one small way at a time and looks whether a test notices (docs/mutation.md).
 * Nothing is written into the sources.
 */
import { fork } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { parseArgs } from 'node:util'
import { importsBelow } from './imports.ts'
import type { Case, Said } from './judge.ts'
import type { Mutant } from './switched.ts'
import { type Judged, shares, survivorLine } from './table.ts'

const root = join(import.meta.dirname, '../..')
const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    tests: { type: 'string' },
    most: { type: 'string', default: '300' },
    line: { type: 'string', multiple: true, default: [] },
  },
})
const folders = positionals.map(folder => relative(root, join(process.cwd(), folder)))
const isIn = (path: string, folder: string) => path === folder || path.startsWith(`${folder}/`)
const isJudged = (path: string) =>
  folders.some(folder => isIn(path, folder)) && !isIn(path, 'core/words/en') && !isIn(path, 'db/schema')

const imports = importsBelow(root)
const files = imports.paths.filter(isJudged)
if (files.length === 0) {
  console.error(
    'npm run mutate -- FOLDER … [--tests FOLDER,…] [--most TESTS] [--line N]: name folders or files of core or db.',
  )
  process.exit(2)
}

const isCore = folders.every(folder => isIn(folder, 'core'))
const near = values.tests?.split(',') ?? (isCore ? ['tests/core'] : ['tests/db', 'tests/electron'])

/** Tests that start other programs see those, not the mutant that stands here. */
const startsPrograms = (path: string) => imports.packagesOf(path).has('node:child_process')
const testFiles = imports.paths.filter(
  path =>
    path.endsWith('.test.ts') &&
    near.some(folder => isIn(path, folder)) &&
    !startsPrograms(path) &&
    [...imports.reachedFrom(path)].some(isJudged),
)

const results: Judged[] = []
let standing: Mutant | undefined

function heard(said: Said): void {
  if (said.said === 'begins') standing = said.mutant
  if (said.said === 'tests' && results.length === 0) {
    console.error(`${said.mutants} mutants in ${files.length} files, ${said.count} tests near them`)
    for (const test of said.leftOut) console.error(`left out, as it does not pass by itself: ${test}`)
  }
  if (said.said === 'judged' && standing) {
    const judged = { ...said, mutant: standing }
    results.push(judged)
    if (!said.killed) console.log(survivorLine(judged))
    standing = undefined
    if (results.length % 100 === 0) console.error(`${results.length} judged`)
  }
}

/** A judge that says nothing for so long will never end; before its first word it runs every test. */
const silence = { first: 900_000, later: 150_000 }
const temporary = mkdtempSync(join(tmpdir(), 'countwheel-mutants-'))

/** Starts a judge on what is left; true once all is judged. A mutant that ends the judge itself is noticed. */
function judge(): Promise<boolean> {
  const given: Case = {
    files,
    testFiles,
    judged: results.map(({ mutant }) => mutant.id),
    lines: values.line.map(Number),
    mostTests: Number(values.most),
  }
  const child = fork(join(import.meta.dirname, 'judge.ts'), [JSON.stringify(given)], {
    execArgv: ['--disable-warning=ExperimentalWarning', '--max-old-space-size=3000'],
    env: { ...process.env, TMPDIR: temporary },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  const end = () => child.kill('SIGKILL')
  let timer = setTimeout(end, silence.first)
  child.on('message', said => {
    heard(said as Said)
    clearTimeout(timer)
    timer = setTimeout(end, silence.later)
  })
  return new Promise(ended =>
    child.on('exit', code => {
      clearTimeout(timer)
      if (code !== 0 && !standing) throw new Error('the judge ended before it judged')
      if (standing) results.push({ mutant: standing, killed: true, unreached: false })
      standing = undefined
      ended(code === 0)
    }),
  )
}

try {
  while (!(await judge())) console.error('a mutant ended its judge: going on after it')
} finally {
  rmSync(temporary, { recursive: true, force: true })
}
console.log(shares(results).join('\n'))
