import { max } from 'drizzle-orm'
import type { Problem } from '../../core/problems.ts'
import { problem } from '../../core/problems.ts'
import type { Read } from '../file/ledger.ts'
import { ImportIndex, type KnownOwner } from '../rows/import-index.ts'
import { question } from '../rows/question.ts'
import { readSettings } from '../rows/settings.ts'
import { type ImportRow, keptContacts } from '../rules/import-rows.ts'
import { dayBook } from '../schema/index.ts'

/** How a line of the list stands to what is on record. */
export interface LineStanding {
  readonly line: number
  readonly problems: readonly Problem[]
  readonly ownerKnown: boolean
  readonly clockKnown: boolean
  /** Owners on record who may be the same person; none where the owner is known. */
  readonly likely: readonly (KnownOwner & { readonly why: 'contact' | 'name' })[]
}

const lastAct = question(read => read.select({ id: max(dayBook.id) }).from(dayBook))

/** The index last made for a handle, for as long as nothing was written since and the memory is not needed elsewhere. */
const made = new WeakMap<Read, { readonly act: number | null; readonly index: WeakRef<ImportIndex> }>()

/** Everything on record: a long list is checked a few hundred lines at a time, and reads it once. */
function indexNow(read: Read): ImportIndex {
  const act = lastAct(read).get()?.id ?? null
  const kept = made.get(read)
  const known = kept?.act === act ? kept.index.deref() : undefined
  if (known) return known
  const index = new ImportIndex(read)
  made.set(read, { act, index: new WeakRef(index) })
  return index
}

/** How lines that can be read stand to what is on record now. Nothing is written. */
export function importStandings(read: Read, rows: readonly ImportRow[]): LineStanding[] {
  const index = indexNow(read)
  const { country } = readSettings(read).place
  return rows.map(({ line, owner, clock }) => {
    const contacts = keptContacts(owner.contacts, country)
    if (!contacts.ok)
      return { line, problems: contacts.problems, ownerKnown: false, clockKnown: false, likely: [] }
    const seen = { ...owner, contacts: contacts.value }
    const ownerId = index.ownerOf(seen, clock)
    const likely = ownerId === undefined ? index.likelyOwners(seen) : []
    const known = clock ? index.clockOf(clock, ownerId) : undefined
    const mayBeSame = [ownerId, ...likely.map(({ id }) => id)]
    const elsewhere = known?.owner && !mayBeSame.includes(known.owner.id) ? known.owner : null
    return {
      line,
      problems: elsewhere ? [problem('clock.otherOwner', 'clock.serial', { owner: elsewhere.name })] : [],
      ownerKnown: ownerId !== undefined,
      clockKnown: known !== undefined,
      likely,
    }
  })
}
