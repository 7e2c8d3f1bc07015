import { execFile } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { stages } from '../../core/standing/stages.ts'
import { sentences } from '../../core/words/en/sentences.ts'
import { verdicts } from '../../core/words/en/shelf.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { demoDayFile } from '../../electron/day/demo-shop.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { counter } from '../../electron/server/requests/counter.ts'
import { estimates } from '../../electron/server/requests/estimates.ts'
import { photographActs } from '../../electron/server/requests/photographs.ts'
import { register } from '../../electron/server/requests/register.ts'
import { random } from '../chance.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import { migrations, now, temporaryFolder } from '../db/temporary-ledger.ts'

const run = promisify(execFile)
const command = join(import.meta.dirname, '../../electron/commands/demo.ts')
const place = temporaryFolder()
const out = join(place.folder, 'out')
afterAll(() => place.remove())

const demo = (...args: string[]) => run(process.execPath, [command, ...args])

/** How the command ended when it did not end well. */
async function failed(...args: string[]): Promise<{ code: number; stderr: string }> {
  try {
    await demo(...args)
  } catch (error) {
    return error as { code: number; stderr: string }
  }
  throw new Error('it ended well')
}

/** A run as the report and as the ledger tell it, as far as they are compared. */
interface Run {
  readonly figures: {
    readonly verdict: string
    readonly ratePerDay: number | null
    readonly scatterSeconds: number | null
  }
  readonly log: readonly {
    readonly at: string
    readonly errorMs: number | null
    readonly leftMs: number | null
    readonly event: string | null
    readonly stands: boolean
  }[]
}

// biome-ignore lint/suspicious/noExplicitAny: the report as a stranger reads it
let day: any
beforeAll(async () => {
  await demo('--out', out)
  day = JSON.parse(readFileSync(join(out, 'day.json'), 'utf8'))
}, 300_000)

const text = async (file: string) => (await run('pdftotext', ['-layout', join(out, file), '-'])).stdout

/** The figures of 1234.50 or -1234.50 as they stand on an English paper, whatever sign and currency stand before them. */
const printed = (amount: string) =>
  Math.abs(Number(amount)).toLocaleString('en-GB', { minimumFractionDigits: 2 })

/** The acts an area of requests takes, as a day file names them. */
const actsOf = (area: string, { routes }: { routes: { method: string; path: string }[] }) =>
  routes.filter(({ method }) => method === 'POST').map(({ path }) => area + path.replace('/', '.'))

describe('the day file of the demonstration', () => {
  it('plays every act of the counter, of estimates and the owner’s word, of photographs and of the register', () => {
    const acts = JSON.parse(readFileSync(demoDayFile(), 'utf8')).map((one: { act: string }) => one.act)
    const all = [
      ...actsOf('counter', counter),
      ...actsOf('estimates', estimates),
      ...actsOf('photographs', photographActs),
      ...actsOf('register', register),
    ]
    expect(all).toContain('counter.takeIn')
    // An owner forgotten leaves a day book that cannot be played again, and the demonstration’s can.
    expect([...new Set(all)].filter(act => !acts.includes(act))).toEqual(['register.forgetOwner'])
  })
})

describe('the demonstration shop', () => {
  it('shows a dozen clocks at every kind of standing', () => {
    expect(day.repairs.length).toBeGreaterThanOrEqual(12)
    const standings = new Set(day.repairs.map((r: { standing: string }) => r.standing))
    for (const stage of [
      'taken-in',
      'estimate-out',
      'on-the-bench',
      'waiting',
      'running-in',
      'ready',
      'declined',
      'collected',
    ]) {
      expect(Object.keys(stages)).toContain(stage)
      expect(standings).toContain(stage)
    }
    expect(new Set(day.repairs.map((r: { clock: string }) => r.clock)).size).toBeGreaterThanOrEqual(9)
  })

  it('prints every number it issued on the paper that carries it', async () => {
    expect(day.papers.length).toBeGreaterThan(30)
    for (const paper of day.papers) {
      const page = await text(paper.file)
      expect(page, paper.file).toContain(paper.number)
      if (['estimate', 'invoice', 'credit-note'].includes(paper.kind)) {
        expect(page, paper.file).toContain(printed(paper.total))
        expect(page, paper.file).toContain(printed(paper.tax))
      }
    }
  }, 300_000)

  it('writes what was handed out as it stood that day', async () => {
    expect(day.handedOut.map((p: { kind: string }) => p.kind)).toEqual([
      'go-ahead',
      'hand-over',
      'run-in-certificate',
      'hand-over',
    ])
    for (const { file, on } of day.handedOut) {
      const day = new Date(on).toLocaleDateString('en-GB', { dateStyle: 'medium', timeZone: 'UTC' })
      expect(await text(file), file).toContain(day)
    }
  })

  it('carries the figures of each run, and they are those of its readings', async () => {
    const ledger = openLedger(join(out, 'shop.countwheel'), { migrations, now, random })
    const handle = createHandler({ ledger, now, pages: out })
    const runsOf = async (number: number) => {
      const response = await handle(new Request(`http://ledger/api/pages/repairs/${number}`))
      return ((await response.json()) as { runs: Run[] }).runs
    }
    let read = 0
    for (const { number, runs } of day.repairs as { number: number; runs: Run[] }[]) {
      const onRecord = await runsOf(number)
      expect(runs).toHaveLength(onRecord.length)
      for (const [at, { figures }] of runs.entries()) {
        expect(Object.keys(verdicts)).toContain(figures.verdict)
        const log = onRecord[at]?.log.filter(entry => entry.stands) ?? []
        const from = log.findLastIndex(entry => entry.leftMs !== null || entry.event !== null)
        const since = log.slice(from).filter(entry => (entry.leftMs ?? entry.errorMs) !== null)
        const [first, last] = [since[0], since.at(-1)]
        if (!first || !last || since.length < 4 || figures.ratePerDay === null) continue
        read += 1
        // From end to end a steady clock gains what its rate says, but for its scatter.
        const days = (Date.parse(last.at) - Date.parse(first.at)) / 86_400_000
        const gained = ((last.errorMs ?? 0) - (first.leftMs ?? first.errorMs ?? 0)) / 1000
        const room = 6 * Math.max(1, figures.scatterSeconds ?? 0)
        expect(Math.abs(gained - figures.ratePerDay * days), `${number}`).toBeLessThan(room)
      }
    }
    ledger.close()
    expect(read).toBeGreaterThanOrEqual(4)
  })

  it('adds its tax up to the cent from its invoices and credit notes', () => {
    const cents = (amount: string) => Math.round(Number(amount) * 100)
    const issued = day.papers.filter((p: { kind: string }) => ['invoice', 'credit-note'].includes(p.kind))
    const sum = issued.reduce((total: number, p: { tax: string }) => total + cents(p.tax), 0)
    expect(cents(day.tax.tax)).toBe(sum)
  })

  it('exports a day book that, played on an empty ledger, gives an equal one', async () => {
    const file = join(out, 'shop.countwheel')
    const ledger = openLedger(file, { migrations, now, random })
    const handle = createHandler({ ledger, now, pages: out })
    const headers = { 'Countwheel-Person': '1' }
    const exported = await (await handle(new Request('http://ledger/api/pages/dayFile', { headers }))).text()
    ledger.close()
    writeFileSync(join(place.folder, 'again.json'), exported)
    const again = join(place.folder, 'again')
    await demo('--out', again, '--day', join(place.folder, 'again.json'))
    expect(ledgerContents(join(again, 'shop.countwheel'))).toEqual(ledgerContents(file))
  }, 300_000)
})

describe('the demo command', () => {
  it('says everything wrong with what it was asked, and writes nothing', async () => {
    const { code, stderr } = await failed('--day', '/nowhere/day.json')
    expect(code).toBe(2)
    expect(stderr).toContain('--out')
    expect(stderr).toContain('/nowhere/day.json')
  })

  it('names the act of a day file that the shop refuses, and why', async () => {
    const acts = JSON.parse(readFileSync(demoDayFile(), 'utf8')).slice(0, 3)
    const file = join(place.folder, 'wrong.json')
    writeFileSync(
      file,
      JSON.stringify([...acts, { at: '2027-02-01T09:00', act: 'counter.takeIn', with: { fault: '' } }]),
    )
    const { code, stderr } = await failed('--out', join(place.folder, 'wrong'), '--day', file)
    expect(code).toBe(1)
    expect(stderr).toContain('Act 4, counter.takeIn')
    expect(stderr).toContain('fault')
  })

  it('names an act that has the shape of no version there ever was', async () => {
    const acts = JSON.parse(readFileSync(demoDayFile(), 'utf8')).slice(0, 3)
    const file = join(place.folder, 'none.json')
    const act = { at: '2027-02-01T09:00', act: 'estimates.recordWord', version: 1, with: { others: [null] } }
    writeFileSync(file, JSON.stringify([...acts, act]))
    const { code, stderr } = await failed('--out', join(place.folder, 'none'), '--day', file)
    expect(code).toBe(1)
    expect(stderr).toContain('Act 4, estimates.recordWord')
    expect(stderr).toContain(sentences['dayFile.unreadable']())
  })
})
