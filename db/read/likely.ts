import { keptContact } from '../../core/owner/contact.ts'
import type { Read } from '../file/ledger.ts'
import { readSettings } from '../rows/settings.ts'
import { type LikelyOwner, likelyOwners } from '../rules/likely.ts'

/** A new owner as typed so far. */
export interface OwnerTyped {
  readonly name: string
  readonly phone: string
  readonly email: string
}

/** Owners on record who may be the one being typed; a contact that cannot be read yet tells nothing. */
export function ownersLike(read: Read, { name, phone, email }: OwnerTyped): LikelyOwner[] {
  const { country } = readSettings(read).place
  const typed = [
    { kind: 'phone', value: phone, preferred: false },
    { kind: 'e-mail', value: email, preferred: false },
  ] as const
  const contacts = typed
    .map(contact => keptContact(contact, country, ''))
    .flatMap(kept => (kept.ok ? [kept.value] : []))
  return likelyOwners(read, { name, contacts })
}
