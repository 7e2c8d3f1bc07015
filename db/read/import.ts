import type { Problem } from '../../core/problems.ts'
import { problem } from '../../core/problems.ts'
import { type ImportRow, keptContacts } from '../books/import.ts'
import { ImportIndex, type KnownOwner } from '../import-index.ts'
import type { Read } from '../ledger.ts'
import { readSettings } from '../settings.ts'

/** How a line of the list stands to what is on record. */
export interface LineStanding {
  readonly line: number
  readonly problems: readonly Problem[]
  readonly ownerKnown: boolean
  readonly clockKnown: boolean
  /** Owners on record who may be the same person; none where the owner is known. */
  readonly likely: readonly (KnownOwner & { readonly why: 'contact' | 'name' })[]
}

/** How lines that can be read stand to what is on record now. Nothing is written. */
export function importStandings(read: Read, rows: readonly ImportRow[]): LineStanding[] {
  const index = new ImportIndex(read)
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
