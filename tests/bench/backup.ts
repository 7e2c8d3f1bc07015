import { createHash } from 'node:crypto'
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { openLedger } from '../../db/file/ledger.ts'
import { photographPath } from '../../db/file/photograph-files.ts'
import { backupFolder } from '../../electron/copies/backups.ts'
import { writeBackup } from '../../electron/copies/write-backup.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { at, rounded } from './measure.ts'
import { keptLedger } from './twenty-years.ts'

const migrations = join(import.meta.dirname, '../../migrations')
const day = (n: number) => `2027-01-${String(n).padStart(2, '0')}T18:00:00.000Z`

/** A tenth of a real photograph each: what is measured is how many there are. */
const photographBytes = 20_000

/** Puts so many photographs on record and beside the ledger. */
function putPhotographs(file: string, count: number): void {
  const db = new Database(file)
  const put = db.prepare('INSERT INTO photographs (hash, media_type, bytes, added_at) VALUES (?, ?, ?, ?)')
  const insert = db.transaction(() => {
    for (let n = 0; n < count; n++) {
      const bytes = Buffer.alloc(photographBytes, `photograph ${n} `)
      const hash = createHash('sha256').update(bytes).digest('hex')
      const path = photographPath(file, { hash, mediaType: 'image/jpeg' })
      mkdirSync(dirname(path), { recursive: true })
      writeFileSync(path, bytes)
      put.run(hash, 'image/jpeg', bytes.length, day(1))
    }
  })
  insert()
  db.close()
}

const bytesIn = (folder: string): number =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0)

/** Backing up a ledger of twenty years with 20,000 photographs, a first and a second time, and how long acts take meanwhile. */
export async function backup(share = 1) {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-backup-'))
  const file = join(folder, 'shop.countwheel')
  copyFileSync(await keptLedger(share), file)
  putPhotographs(file, Math.round(20_000 * share))
  const ledger = openLedger(file, { migrations, now: () => day(1), random })
  const handle = createHandler({ ledger, now: () => day(1), pages: '.', played: true })
  let owners = 0
  const act = async (): Promise<number> => {
    const from = performance.now()
    const answer = await handle(
      new Request('http://ledger/api/register/addOwner', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ name: `Tobias Vane ${owners++}` }),
      }),
    )
    if (!answer.ok) throw new Error(await answer.text())
    return performance.now() - from
  }
  const copied = async (n: number) => {
    const from = performance.now()
    await writeBackup(ledger, { at: day(n), folder: backupFolder(file) })
    return rounded((performance.now() - from) / 1000)
  }
  const alone: number[] = []
  const during: number[] = []
  const pause = () => new Promise(done => setTimeout(done, 5))
  try {
    const firstSeconds = await copied(1)
    const before = bytesIn(backupFolder(file))
    await act()
    const secondSeconds = await copied(2)
    const secondMb = rounded((bytesIn(backupFolder(file)) - before) / 1e6)
    for (let n = 0; n < 300; n++) {
      alone.push(await act())
      await pause()
    }
    let done = false
    const third = copied(3).finally(() => {
      done = true
    })
    while (!done) {
      during.push(await act())
      await pause()
    }
    const ratio = rounded(at(during, 0.95) / at(alone, 0.95))
    return {
      ledgerMb: rounded(statSync(file).size / 1e6),
      firstSeconds,
      secondSeconds,
      secondMb,
      thirdSecondsWithActs: await third,
      acts: during.length,
      actP95Ms: rounded(at(alone, 0.95)),
      actP95MsMeanwhile: rounded(at(during, 0.95)),
      actLongestMsMeanwhile: rounded(at(during, 1)),
      ratio,
      kept: secondSeconds <= 10 && ratio <= 2,
    }
  } finally {
    ledger.close()
    rmSync(folder, { recursive: true, force: true })
  }
}
