import { cpSync, existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { inTodaysShape } from '../../core/acts/versions.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { verified } from '../../db/verify/index.ts'
import { demoLedger } from '../../electron/day/demo-shop.ts'
import { places } from '../../electron/places.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { ledgerContents } from '../db/ledger-contents.ts'
import { migrations, now, temporaryFolder } from '../db/temporary-ledger.ts'

const fixtures = join(import.meta.dirname, '../fixtures')
const shapes = readdirSync(fixtures).filter(name => name.startsWith('shape-'))

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

/** What is drawn by the program, or which file it is, differs; every other table must come out the same. */
const drawn = new Set(['kept_papers', 'kept_handed_papers'])
const toldOfItsDay = new Set(['run-in-certificate', 'hand-over', 'bench-card', 'warranty'])

/** A run is held to the limits usual when it begins and judged by the sums of the day it ends, and papers handed out tell the steps, advice and figures of their day: an older day book played today has today's. */
function unjudged(table: string, row: Record<string, unknown>) {
  const { figures, limit_per_day, contents, contents_hash, ...rest } = row
  if (table === 'run_in_runs') return rest
  const isPaper = table === 'handed_papers' || table === 'documents'
  return isPaper && toldOfItsDay.has(row.kind as string) ? rest : row
}
const contents = (file: string) => ledgerContents(file, unjudged).filter(([table]) => !drawn.has(table))
/** The chain's salts are fresh where the day book had none: but what was entered is the same. */
const withoutChain = (file: string) => contents(file).filter(([table]) => table !== 'day_book')
/** What was entered, its inputs in today's shape: a row keeps the shape it was written in, and played anew it has today's. */
const entries = (file: string) => {
  const db = new Database(file, { readonly: true })
  const rows = db
    .prepare<[], { act: string; version: number; input: string }>(
      'SELECT id, at, person_id, act, version, subject_kind, subject_id, input FROM day_book',
    )
    .all()
  db.close()
  return rows.map(({ input, version, ...row }) => ({
    ...row,
    input: inTodaysShape(row.act, version, JSON.parse(input)),
  }))
}

const lastHash = (file: string) => {
  const db = new Database(file, { readonly: true })
  const hash = db.prepare('SELECT hash FROM day_book ORDER BY id DESC LIMIT 1').pluck().get()
  db.close()
  return hash
}

/** Plays a day book into a fresh ledger and closes it; returns its file. */
async function played(dayFile: string, name: string): Promise<string> {
  const file = join(place.folder, name)
  const { ledger } = await demoLedger({ file, migrations, random, dayFile })
  ledger.close()
  return file
}

const faultsOf = (file: string) => {
  const ledger = openUntouched(file, { migrations, now, random })
  try {
    return [...verified({ read: ledger.read, file, migrations })].flatMap(({ faults }) => faults)
  } finally {
    ledger.close()
  }
}

/** The shape's ledger, copied and brought up to date, and closed. */
function opened(shape: string): string {
  cpSync(join(fixtures, shape), place.folder, { recursive: true })
  const file = join(place.folder, 'shop.countwheel')
  openLedger(file, { migrations, now, random }).close()
  return file
}

describe.each(shapes)('a ledger of %s', shape => {
  it('opens, is brought up to date, and is sound with its photographs and papers', () => {
    const file = opened(shape)
    expect(faultsOf(file)).toEqual([])
    expect(existsSync(`${file}-wal`)).toBe(false)
  })

  it('comes to the same when its day book of that time is played anew', async () => {
    const file = opened(shape)
    const again = await played(join(fixtures, shape, 'day-book.json'), 'again.countwheel')
    expect(withoutChain(again)).toEqual(withoutChain(file))
    expect(entries(again)).toEqual(entries(file))
  })

  it('played anew, exports a day book that plays to the very same chain', async () => {
    const file = await played(join(fixtures, shape, 'day-book.json'), 'first.countwheel')
    const ledger = openUntouched(file, { migrations, now, random })
    const handle = createHandler({ ledger, now, pages: places.pages, played: true })
    const dayFile = join(place.folder, 'exported.json')
    writeFileSync(dayFile, await (await handle(new Request('http://ledger/api/pages/dayFile'))).text())
    ledger.close()
    expect(lastHash(await played(dayFile, 'again.countwheel'))).toBe(lastHash(file))
  })
})
