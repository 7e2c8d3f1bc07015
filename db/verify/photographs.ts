import { asc, gt } from 'drizzle-orm'
import { foundBeside } from '../file/files-beside.ts'
import { photographPath } from '../file/photograph-files.ts'
import { byId } from '../rows/by-id.ts'
import { photographs as table } from '../schema/index.ts'
import { type Check, fault } from './check.ts'

/** Every photograph on record: its file beside the ledger, with the bytes its name says. */
export const photographs: Check = function* ({ read, file }) {
  const rows = byId((after, limit) =>
    read.select().from(table).where(gt(table.id, after)).orderBy(asc(table.id)).limit(limit).all(),
  )
  let looked = 0
  for (const row of rows) {
    const { hash } = row
    const found = foundBeside(photographPath(file, row), hash)
    if (found.state !== 'kept') yield fault(`photograph.${found.state}`, { hash })
    else if (found.bytes.length !== row.bytes)
      yield fault('photograph.length', { hash, kept: row.bytes, found: found.bytes.length })
    looked += 1
  }
  return looked
}
