import { and, eq, isNull } from 'drizzle-orm'
import type { Read } from '../file/ledger.ts'
import { clockOwners, clocks, ownerContacts, owners } from '../schema/index.ts'
import { plainMark } from './find-entries.ts'

/** An owner as far as telling one from another goes; contacts as they are kept. */
export interface OwnerSeen {
  readonly name: string
  readonly address: string
  readonly contacts: readonly { readonly value: string }[]
}

/** A clock as far as telling one from another goes. */
export interface ClockSeen {
  readonly form: string
  readonly maker: string
  readonly serial: string
  readonly marks: string
}

/** An owner on record. */
export interface KnownOwner {
  readonly id: number
  readonly name: string
}

const folded = (text: string) => text.normalize('NFKC').toLowerCase().replaceAll(/\s+/g, ' ').trim()

const byContact = (name: string, value: string) => `${folded(name)}\n${value}`
const byAddress = (name: string, address: string) => `${folded(name)}\n\n${folded(address)}`
const bySerial = ({ serial, maker }: ClockSeen) => `${plainMark(serial).toLowerCase()}\n${folded(maker)}`
const byLook = ({ form, maker, marks }: ClockSeen, ownerId: number) =>
  `${ownerId}\n${form}\n${folded(maker)}\n${folded(marks)}`

/** Every owner and clock on record, to find again those that a list names. What is entered meanwhile is added. */
export class ImportIndex {
  readonly #sameOwner = new Map<string, number>()
  readonly #byName = new Map<string, KnownOwner[]>()
  readonly #byContact = new Map<string, KnownOwner[]>()
  readonly #bySerial = new Map<string, { id: number; owner: KnownOwner | null }>()
  readonly #byLook = new Map<string, number>()

  constructor(read: Read) {
    const contacts = Map.groupBy(
      read.select().from(ownerContacts).where(isNull(ownerContacts.struckReason)).all(),
      ({ ownerId }) => ownerId,
    )
    for (const row of read.select().from(owners).where(isNull(owners.mergedIntoId)).all())
      this.addOwner(row.id, { ...row, contacts: contacts.get(row.id) ?? [] })
    const held = read
      .select({ clock: clocks, owner: { id: owners.id, name: owners.name } })
      .from(clocks)
      .leftJoin(clockOwners, and(eq(clockOwners.clockId, clocks.id), isNull(clockOwners.untilAt)))
      .leftJoin(owners, eq(owners.id, clockOwners.ownerId))
      .all()
    for (const { clock, owner } of held) this.addClock(clock.id, clock, owner)
  }

  addOwner(id: number, owner: OwnerSeen): void {
    const known = { id, name: owner.name }
    const push = (map: Map<string, KnownOwner[]>, key: string) =>
      map.set(key, [...(map.get(key) ?? []), known])
    this.#sameOwner.set(byAddress(owner.name, owner.address), id)
    push(this.#byName, folded(owner.name))
    for (const { value } of owner.contacts) {
      this.#sameOwner.set(byContact(owner.name, value), id)
      push(this.#byContact, value)
    }
  }

  addClock(id: number, clock: ClockSeen, owner: KnownOwner | null): void {
    if (clock.serial) this.#bySerial.set(bySerial(clock), { id, owner })
    if (owner) this.#byLook.set(byLook(clock, owner.id), id)
  }

  /** The owner of the same name and a contact in common, without contacts of the same name and address; else a likely one who has this very clock. */
  ownerOf(owner: OwnerSeen, clock: ClockSeen | null): number | undefined {
    return this.#namedOwner(owner) ?? this.#holderOf(owner, clock)
  }

  #namedOwner({ name, address, contacts }: OwnerSeen): number | undefined {
    if (contacts.length === 0) return this.#sameOwner.get(byAddress(name, address))
    return contacts
      .map(({ value }) => this.#sameOwner.get(byContact(name, value)))
      .find(id => id !== undefined)
  }

  #holderOf(owner: OwnerSeen, clock: ClockSeen | null): number | undefined {
    const holder = clock?.serial ? this.#bySerial.get(bySerial(clock))?.owner?.id : undefined
    return this.likelyOwners(owner).find(({ id }) => id === holder)?.id
  }

  /** Owners who may be the same person: of the same name, or with a contact in common. */
  likelyOwners({ name, contacts }: OwnerSeen): (KnownOwner & { why: 'contact' | 'name' })[] {
    const reached = contacts.flatMap(({ value }) => this.#byContact.get(value) ?? [])
    const named = this.#byName.get(folded(name)) ?? []
    const all = [
      ...reached.map(one => ({ ...one, why: 'contact' as const })),
      ...named.map(one => ({ ...one, why: 'name' as const })),
    ]
    return [...new Map(all.toReversed().map(one => [one.id, one])).values()].reverse()
  }

  /** The clock of the same serial and maker, with who has it; without a serial, the owner's own of the same form, maker and marks. */
  clockOf(
    clock: ClockSeen,
    ownerId: number | undefined,
  ): { id: number; owner: KnownOwner | null } | undefined {
    if (clock.serial) return this.#bySerial.get(bySerial(clock))
    const id = ownerId === undefined ? undefined : this.#byLook.get(byLook(clock, ownerId))
    return id === undefined ? undefined : { id, owner: null }
  }
}
