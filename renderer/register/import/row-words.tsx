import type { ImportedClock, ImportedOwner } from '../../../core/import/rows.ts'
import { Entry } from '../../parts/ledger.tsx'
import { useShop } from '../../shop.tsx'

/** An owner of the list in two lines: the name, then where and how to reach them. */
export function OwnerWords({ owner: { name, address, contacts } }: { owner: ImportedOwner }) {
  const second = [address.replaceAll('\n', ', '), ...contacts.map(({ value }) => value)]
  return <Entry lead={name} second={second.filter(Boolean).join(' · ')} />
}

/** A clock of the list in one line. */
export function ClockWords({ clock }: { clock: ImportedClock | null }) {
  const { words } = useShop()
  if (!clock) return <span className="quiet">{words.listImport.noClock}</span>
  return [words.forms[clock.form], clock.maker, clock.serial, clock.marks].filter(Boolean).join(', ')
}
