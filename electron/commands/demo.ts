import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { en } from '../../core/words/en/index.ts'
import { allHandedOut } from '../../db/papers/working-paper.ts'
import { allDocuments } from '../../db/read/accounts.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { DayFileStopped } from '../day/day-file.ts'
import { demoDayFile, demoLedger } from '../day/demo-shop.ts'
import { keepPapers } from '../papers/frozen.ts'
import { places } from '../places.ts'
import { withMessages } from '../server/problems.ts'
import { outside } from '../shop/outside.ts'
import { handedFile, ledgerReport, paperFile } from './demo-report.ts'

const say = en.demo

interface Choice {
  readonly out: string
  readonly day: string
}

/** The command's own words; says everything wrong with them and ends with 2. */
function choice(args: string[]): Choice {
  try {
    const { values } = parseArgs({ args, options: { out: { type: 'string' }, day: { type: 'string' } } })
    const day = resolve(values.day ?? demoDayFile())
    const wrong = [
      ...(values.out ? [] : [say.outNeeded]),
      ...(existsSync(day) ? [] : [say.noDayFile({ file: day })]),
    ]
    if (wrong.length === 0 && values.out) return { out: resolve(values.out), day }
    return end(2, [...wrong, say.usage])
  } catch {
    return end(2, [say.usage])
  }
}

function end(code: number, lines: readonly string[]): never {
  for (const line of lines) console.error(line)
  process.exit(code)
}

type Demo = Awaited<ReturnType<typeof demoLedger>>

/** Fetches every paper from the handler, as a page would, and writes it under its own number; also those that were handed out. */
async function writePapers({ handle, ledger }: Demo, out: string): Promise<number> {
  const papers = [
    ...allDocuments(ledger.read).map(paper => [`${paper.id}.pdf`, paperFile(paper)] as const),
    ...allHandedOut(ledger.read).map(paper => [`handed/${paper.id}.pdf`, handedFile(paper)] as const),
  ]
  for (const [path, file] of papers) {
    const response = await handle(new Request(`http://ledger/papers/${path}`))
    if (!response.ok) throw new Error(`${file}: ${response.status}`)
    writeFileSync(join(out, file), Buffer.from(await response.arrayBuffer()))
  }
  return papers.length
}

/** What stopped the day, in words. */
function told(error: unknown): readonly string[] {
  if (error instanceof DayFileStopped)
    return [
      say.stopped({ number: error.index + 1, act: error.act }),
      ...error.problems.map(p => `  ${[p.field, p.message].filter(Boolean).join(': ')}`),
    ]
  if (error instanceof Refusal)
    return [say.unreadable, ...withMessages(error.problems).map(p => `  ${p.field}: ${p.message}`)]
  if (error instanceof SyntaxError) return [say.notJson({ reason: error.message })]
  throw error
}

/** `npm run demo -- --out DIR [--day FILE]`: plays a day on a fresh ledger and writes what it issued to DIR. */
async function main(): Promise<void> {
  const { out, day } = choice(process.argv.slice(2))
  mkdirSync(out, { recursive: true })
  const file = join(out, 'shop.countwheel')
  for (const ending of ['', '-wal']) rmSync(`${file}${ending}`, { force: true })
  try {
    const demo = await demoLedger({
      file,
      migrations: places.migrations,
      random: outside.random,
      dayFile: day,
    })
    const report = ledgerReport(demo.ledger, demo.now())
    writeFileSync(join(out, 'day.json'), `${JSON.stringify(report, null, 2)}\n`)
    await keepPapers(demo.ledger)
    const papers = await writePapers(demo, out)
    demo.ledger.close()
    console.log(say.done({ acts: demo.played.length, repairs: report.repairs.length, papers, out }))
  } catch (error) {
    end(1, told(error))
  }
}

await main()
