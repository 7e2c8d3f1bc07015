import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { isKept, pictureOf } from '../../core/photograph/picture.ts'
import { hashOf } from '../../db/file/files-beside.ts'
import { openLedger } from '../../db/file/ledger.ts'
import type { Outside } from '../../db/file/outside.ts'
import { writePhotograph } from '../../db/file/photograph-files.ts'
import { accepted } from '../../db/rules/checked-in.ts'
import { places } from '../places.ts'
import { createHandler } from '../server/handler.ts'
import { type Played, parseDayFile, playDay } from './day-file.ts'

/** The day file of the demonstration shop. */
export const demoDayFile = () => join(places.assets, 'demo', 'day.json')

/** A clock that stands where it is put, until it is let go and walks on from there with the computer's. */
export function stagedClock() {
  let instant = '2000-01-01T00:00:00.000Z'
  let letGoAt: number | null = null
  return {
    now: () =>
      letGoAt === null ? instant : new Date(Date.parse(instant) + Date.now() - letGoAt).toISOString(),
    set: (next: string) => {
      instant = next
    },
    letGo: () => {
      letGoAt = Date.now()
    },
  }
}

/** Chance from outside, and the salt that an act of a day file brings along. */
export function stagedChance(random: Outside['random']) {
  let salt: string | undefined
  return {
    random: (bytes: number) => {
      const given = salt
      salt = undefined
      return given === undefined ? random(bytes) : Buffer.from(given, 'hex')
    },
    setSalt: (next: string | undefined) => {
      salt = next
    },
  }
}

/** Puts the photographs that stand beside a day file, in a folder of that name, beside the ledger under their hashes. */
function putPhotographs(dayFile: string, ledgerFile: string): void {
  const folder = join(dirname(dayFile), 'photographs')
  if (!existsSync(folder)) return
  for (const name of readdirSync(folder)) {
    const bytes = readFileSync(join(folder, name))
    const { mediaType } = accepted(pictureOf(bytes))
    if (isKept(mediaType)) writePhotograph(ledgerFile, { hash: hashOf(bytes), mediaType }, bytes)
  }
}

/**
 * The demonstration shop: the shipped day file (or `dayFile`) played into a fresh ledger at `file`, whose clock then walks on from the
 * last act's time.
 */
export async function demoLedger({
  file,
  migrations,
  random,
  dayFile = demoDayFile(),
}: {
  file: string
  migrations: string
  random: Outside['random']
  dayFile?: string
}) {
  const clock = stagedClock()
  const chance = stagedChance(random)
  const ledger = openLedger(file, { migrations, now: clock.now, random: chance.random })
  try {
    const handle = createHandler({ ledger, now: clock.now, pages: places.pages, played: true })
    putPhotographs(dayFile, file)
    const acts = parseDayFile(readFileSync(dayFile, 'utf8'))
    const played: Played[] = await playDay({ handle, setNow: clock.set, setSalt: chance.setSalt }, acts)
    clock.letGo()
    return { ledger, now: clock.now, handle, played }
  } catch (error) {
    ledger.close()
    throw error
  }
}
