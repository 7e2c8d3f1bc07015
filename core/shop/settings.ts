import type { KeepingPolicy } from '../backups/kept.ts'
import type { WorkWeek } from '../calendar/opening.ts'
import type { LineKind } from '../pricing/kinds/index.ts'
import type { PriceBook } from '../pricing/price-book.ts'
import type { Tax, TaxRules } from '../pricing/price-input.ts'
import type { Going, LimitsSetting } from '../run-in/limits.ts'
import type { RunInPolicy } from '../run-in/policy.ts'
import type { TaxDue } from '../tax/due.ts'
import type { Duration } from '../vocabulary/clock.ts'
import type { Exclusion, Scope } from '../vocabulary/work.ts'

/** How long a kind of work is answered for; null where it is not. */
export type WarrantyTermSetting = { readonly length: number; readonly unit: 'months' | 'days' } | null

/** Everything the owner of the shop decides once and papers, sums and warnings follow. */
export interface Settings {
  readonly shop: {
    readonly name: string
    readonly addressLines: readonly string[]
    readonly phone: string
    readonly email: string
    readonly taxNumber: string
  }
  readonly place: {
    /** ISO 3166 alpha-2: how phone numbers without a prefix are read. */
    readonly country: string
    readonly locale: string
    readonly timeZone: string
    readonly currency: string
    readonly paper: 'a4' | 'letter'
    readonly units: 'mm' | 'in'
  }
  readonly hours: { readonly week: WorkWeek }
  /** The smallest amount that is paid in cash, in major units; '0' where cash is not rounded. */
  readonly cash: { readonly step: string }
  readonly tax: TaxRules & {
    readonly byKind: Readonly<Record<LineKind, readonly Tax[]>>
    /** When tax counts: with the invoice, or with the money for it. */
    readonly due: TaxDue
  }
  readonly prices: PriceBook
  readonly estimate: {
    readonly validDays: number
    /** How far a bill may pass the agreed sum without a new go-ahead: the smaller of the two counts. */
    readonly overrunPercent: string
    readonly overrunAmount: string
  }
  readonly warranty: {
    readonly startsOn: 'collection' | 'invoice' | 'ready'
    readonly convention: 'same-date' | 'day-before'
    readonly onComeback: 'restart' | 'continue'
    readonly pausesInShop: boolean
    readonly terms: Readonly<Record<Scope, WarrantyTermSetting>>
    readonly exclusions: readonly Exclusion[]
  }
  readonly runIn: Readonly<Record<Duration, RunInPolicy>>
  /** How near and how steady each kind of clock has to go, in seconds a day and seconds, as decimal text. */
  readonly limits: Readonly<Record<Going, LimitsSetting>>
  readonly collection: { readonly uncollectedDays: number }
  /** How many years after the year of its issue a paper is kept, as tax law asks. */
  readonly privacy: { readonly keepPapersYears: number }
  /** Whether invoices and credit notes are also to be had as EN 16931 XML. */
  readonly eInvoice: { readonly on: boolean }
  readonly backups: {
    /** Whether copies are made without being asked. */
    readonly automatic: boolean
    /** The whole path of the folder they go to; '' for the one beside the ledger. */
    readonly folder: string
    readonly keep: KeepingPolicy
    /** From how many days on an entry that stands in no copy is told of. */
    readonly lateDays: number
  }
}

/** The names under which groups of settings are kept. */
export type SettingsGroup = keyof Settings
