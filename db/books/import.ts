import { max, sql } from 'drizzle-orm'
import type { SQLiteTable } from 'drizzle-orm/sqlite-core'
import { type Problem, problem } from '../../core/problems.ts'
import type { Write } from '../file/ledger.ts'
import { clockEntry, ownerEntry } from '../rows/find-entries.ts'
import { ImportIndex } from '../rows/import-index.ts'
import { refuse, refuseAny } from '../rows/refusal.ts'
import { ownerRow } from '../rows/register-rows.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { type ImportRow, keptContacts } from '../rules/import-rows.ts'
import type { ClockEntry, ListedOwner } from '../rules/register-entries.ts'
import { clockOwners, clocks, findEntries, ownerContacts, owners } from '../schema/index.ts'

type Rows<T extends SQLiteTable> = T['$inferInsert'][]

/** Writes rows of the same columns by one statement, put together once: doing so for each row would take most of the time. */
function insertAll<T extends SQLiteTable>(tx: Write, table: T, rows: Rows<T>): void {
  const columns = Object.keys(rows[0] ?? {})
  if (columns.length === 0) return
  const blanks = Object.fromEntries(columns.map(name => [name, sql.placeholder(name)]))
  const statement = tx
    .insert(table)
    .values(blanks as T['$inferInsert'])
    .prepare()
  for (const row of rows) statement.run(row)
}

const nextId = (tx: Write, table: typeof owners | typeof clocks): number =>
  (tx
    .select({ last: max(table.id) })
    .from(table)
    .get()?.last ?? 0) + 1

/** Takes lines in one after the other, counts what comes of them, and then writes everything that is new. */
class Entering {
  readonly counted = { ownersEntered: 0, ownersKnown: 0, clocksEntered: 0, clocksKnown: 0 }
  readonly problems: Problem[] = []
  readonly #tx: Write
  readonly #at: string
  readonly #index: ImportIndex
  readonly #country: string
  readonly #owners: Rows<typeof owners> = []
  readonly #contacts: Rows<typeof ownerContacts> = []
  readonly #clocks: Rows<typeof clocks> = []
  readonly #held: Rows<typeof clockOwners> = []
  readonly #found: Rows<typeof findEntries> = []
  #ownerId: number
  #clockId: number

  constructor(tx: Write, at: string) {
    this.#tx = tx
    this.#at = at
    this.#index = new ImportIndex(tx)
    this.#country = readSettings(tx).place.country
    this.#ownerId = nextId(tx, owners)
    this.#clockId = nextId(tx, clocks)
  }

  /** Takes in what is new of the line; what is wrong with it is kept among the problems. */
  take(row: ImportRow, index: number): void {
    const contacts = keptContacts(row.owner.contacts, this.#country)
    if (!contacts.ok) {
      this.problems.push(...contacts.problems.map(one => ({ ...one, field: `rows[${index}].${one.field}` })))
      return
    }
    const ownerId = this.#owner(row, { ...row.owner, contacts: contacts.value }, `rows[${index}]`)
    if (row.clock) this.#clock(row.clock, { id: ownerId, name: row.owner.name }, `rows[${index}]`)
  }

  #owner({ sameAs, clock }: ImportRow, owner: ListedOwner, field: string): number {
    const taken = sameAs === null ? undefined : ownerRow(this.#tx, sameAs, `${field}.sameAs`).id
    const known = this.#index.ownerOf(owner, clock) ?? taken
    if (known !== undefined) {
      this.counted.ownersKnown += 1
      return known
    }
    const id = this.#ownerId++
    const { contacts, ...entry } = owner
    this.#owners.push({ id, ...entry, sinceAt: this.#at })
    for (const contact of contacts) this.#contacts.push({ ownerId: id, ...contact })
    this.#found.push({ kind: 'owner', subjectId: id, ...ownerEntry(owner, contacts) })
    this.#index.addOwner(id, owner)
    this.counted.ownersEntered += 1
    return id
  }

  #clock(clock: ClockEntry, owner: { id: number; name: string }, field: string): void {
    const known = this.#index.clockOf(clock, owner.id)
    if (known?.owner && known.owner.id !== owner.id) {
      this.problems.push(problem('clock.otherOwner', `${field}.clock.serial`, { owner: known.owner.name }))
      return
    }
    if (known) {
      this.counted.clocksKnown += 1
      return
    }
    const id = this.#clockId++
    this.#clocks.push({ id, ...clock })
    this.#held.push({ clockId: id, ownerId: owner.id, fromAt: this.#at })
    this.#found.push({ kind: 'clock', subjectId: id, ...clockEntry(clock) })
    this.#index.addClock(id, clock, owner)
    this.counted.clocksEntered += 1
  }

  /** Writes everything that was taken in and is new. */
  write(): void {
    insertAll(this.#tx, owners, this.#owners)
    insertAll(this.#tx, ownerContacts, this.#contacts)
    insertAll(this.#tx, clocks, this.#clocks)
    insertAll(this.#tx, clockOwners, this.#held)
    insertAll(this.#tx, findEntries, this.#found)
  }
}

/**
 * Enters an existing shop's owners and clocks, all lines or none. Who is on record already, by name and a contact or by
 * serial and maker, is left as it is, so that the same list a second time is refused as having nothing new.
 */
export const importRegister = verb('register.import', (tx, input: { rows: readonly ImportRow[] }, doing) => {
  const entering = new Entering(tx, doing.at)
  for (const [index, row] of input.rows.entries()) entering.take(row, index)
  refuseAny(entering.problems)
  const { ownersEntered, clocksEntered } = entering.counted
  if (ownersEntered + clocksEntered === 0) refuse('import.nothingNew', 'rows')
  entering.write()
  return { subject: { kind: 'shop', id: 1 }, result: entering.counted }
})
