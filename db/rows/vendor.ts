import { eq, sql } from 'drizzle-orm'
import type { Read, Write } from '../file/ledger.ts'
import { vendors } from '../schema/index.ts'
import { known } from './refusal.ts'

/** A vendor by number, or by name: one of that name, or a new one. Neither means none. */
export interface VendorEntry {
  readonly vendorId: number | null
  readonly vendor: string
}

/** The vendor of that name, whatever its capitals. */
export const vendorNamed = (read: Read, name: string) =>
  read.select().from(vendors).where(sql`${vendors.name} = ${name} COLLATE NOCASE`).get()

/** The vendor's number, entered anew where the name is new; null where none is named. */
export function vendorIdFor(tx: Write, { vendorId, vendor }: VendorEntry): number | null {
  if (vendorId !== null)
    return known(
      tx.select().from(vendors).where(eq(vendors.id, vendorId)).get(),
      'vendor.unknown',
      'vendorId',
    ).id
  if (vendor === '') return null
  return vendorNamed(tx, vendor)?.id ?? tx.insert(vendors).values({ name: vendor }).returning().get().id
}
