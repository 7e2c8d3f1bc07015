import { rmSync } from 'node:fs'
import { eq, sql } from 'drizzle-orm'
import { pathBeside } from '../file/files-beside.ts'
import type { Ledger, Read, Write } from '../file/ledger.ts'
import type { NeededFile } from '../file/look.ts'
import type { Outside } from '../file/outside.ts'
import { enter } from '../rows/day-book.ts'
import { findClock, findOwner } from '../rows/find-entries.ts'
import {
  dropDrafts,
  dropHandedPapers,
  dropPhotographs,
  emptyRows,
  forgottenOf,
  knownTexts,
  rebuildFind,
  rowsAbout,
} from '../rows/forgotten.ts'
import { withMerged } from '../rows/merged-owners.ts'
import { type RedactInput, redactAct } from '../rows/redactions.ts'
import { refuseAny } from '../rows/refusal.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { type Doing, verb } from '../rows/verb.ts'
import { forgetProblems } from '../rules/forget.ts'
import { forgottenOwners, keptHandedPapers, keptPapers, photographs } from '../schema/index.ts'

/** The owner whose personal data are taken out, and why. */
export interface ForgetOwner {
  readonly ownerId: number
  readonly reason: string
}

/** Takes their texts out of the day book, by an entry of its own that names the rows; returns how many. */
function redactRows(tx: Write, rows: RedactInput['rows'], { reason, doing, random }: Redacting): number {
  if (rows.length === 0) return 0
  const { at, personId } = doing
  const entry = { at, personId, act: redactAct, version: 1, key: null, subjectKind: 'shop', subjectId: 1 }
  enter(tx, { ...entry, input: JSON.stringify({ rows, reason } satisfies RedactInput), result: '{}' }, random)
  tx.run(sql`
    UPDATE day_book SET input = NULL, salt = NULL, result = NULL
    WHERE id IN (SELECT value FROM json_each(${JSON.stringify(rows.map(({ id }) => id))}))`)
  return rows.length
}

interface Redacting {
  readonly reason: string
  readonly doing: Doing
  readonly random: Outside['random']
}

/**
 * Takes out of the ledger what is personal about an owner, also about duplicates merged into it: see docs/decisions/day-book.md. The
 * papers issued stay, as tax law asks. Refused while a clock of theirs is in the shop or money is open.
 */
const forget = verb('register.forgetOwner', (tx, { ownerId, reason }: ForgetOwner, doing, random) => {
  ownerRow(tx, ownerId)
  const about = forgottenOf(tx, withMerged(tx, ownerId))
  refuseAny(forgetProblems(tx, about))
  const texts = knownTexts(tx, about)
  const rows = redactRows(tx, rowsAbout(tx, about, texts), { reason, doing, random })
  const files = [...dropPhotographs(tx, about), ...dropHandedPapers(tx, about)]
  emptyRows(tx, about)
  dropDrafts(tx, texts)
  for (const id of about.owners) {
    tx.insert(forgottenOwners)
      .values({ id, at: doing.at, personId: doing.personId, reason })
      .onConflictDoNothing()
      .run()
    findOwner(tx, id)
  }
  for (const id of about.clocks) findClock(tx, id)
  rebuildFind(tx)
  return { subject: { kind: 'owner', id: ownerId }, result: { id: ownerId, rows, files } }
})

/** True while anything on record still shows the file, as when the act was only tried. */
const isStillShown = (read: Read, { hash }: NeededFile): boolean =>
  [photographs, keptPapers, keptHandedPapers].some(
    table => read.select({ hash: table.hash }).from(table).where(eq(table.hash, hash)).get() !== undefined,
  )

function forgetWhole(ledger: Ledger, doing: Doing, input: ForgetOwner) {
  const { files, ...result } = forget(ledger, doing, input)
  for (const file of files)
    if (!isStillShown(ledger.read, file))
      rmSync(pathBeside(ledger.file, file.what, file.hash, file.ending), { force: true })
  ledger.purge()
  return { ...result, files: files.length }
}

/** Forgets an owner, and leaves nothing of what was taken out in the ledger's file or beside it. */
export const forgetOwner = Object.assign(forgetWhole, { act: forget.act })
