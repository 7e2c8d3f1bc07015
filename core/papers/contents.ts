import type { Caution } from '../cautions/cautions.ts'
import type { Minor } from '../money/minor.ts'
import type { DocumentAmount, Priced, PriceLine, TaxPart, TaxRules } from '../pricing/price.ts'
import type { Dial, Duration, Form } from '../vocabulary/clock.ts'
import type {
  Belonging,
  Component,
  Custody,
  EarlierRepair,
  Finish,
  Grade,
  Position,
  SpringState,
} from '../vocabulary/intake.ts'
import type { Exclusion, LineWork, PaymentMethod, Scope, SetUpAdvice } from '../vocabulary/work.ts'

/*
 * What a paper says, as data. It is frozen as JSON in the ledger when the document is issued and never changes after:
 * codes and values where the shop's words can say it again, a person's own text where a person typed it.
 * Fields are only ever added, and added as optional ones, so that a paper of years ago can be printed again.
 * Dates are civil (`YYYY-MM-DD`), instants ISO UTC, amounts integer minor units of the head's currency, and quantities,
 * unit prices (major units) and percent rates decimal strings.
 */

/** The shop as it called itself on the day of issue. */
export interface PaperShop {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly phone?: string
  readonly email?: string
  /** The shop's registration for tax, printed where invoices must carry it. */
  readonly taxNumber?: string
  /** ISO 3166-1 alpha-2. */
  readonly country?: string
}

/** The owner as known on the day of issue. */
export interface PaperOwner {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly phone?: string
  /** ISO 3166-1 alpha-2, where it is known. */
  readonly country?: string
}

/** The clock, described well enough to tell it from another. */
export interface PaperClock {
  readonly form: Form
  /** The maker as read on the clock. */
  readonly maker?: string
  readonly serial?: string
  readonly trains?: number
  readonly duration?: Duration
  readonly dial?: Dial
  /** Marks and anything else a person wrote to tell it by. */
  readonly marks?: string
}

/** What every paper carries, numbered in a series or not. */
export interface PaperTop {
  readonly shop: PaperShop
  /** BCP 47, such as `en-GB`: how dates and figures are written. */
  readonly locale: string
  /** IANA name, such as `Europe/London`: the clock on the shop's wall. */
  readonly timeZone: string
  /** ISO 4217, such as `GBP`. */
  readonly currency: string
  readonly language: 'en'
  /** The day of issue; of a working paper the day it was drawn. */
  readonly issuedOn: string
  readonly owner: PaperOwner
  readonly clock?: PaperClock
  readonly repairNumber?: string
}

/** What every document of a numbered series carries. */
export interface PaperHead extends PaperTop {
  /** The document's own number in its series. */
  readonly number: string
}

/** One step of how a figure came about; its sentence stands in the words catalogue under `workingSteps`. */
export interface WorkingStep {
  readonly code: string
  readonly values: Readonly<Record<string, string | number>>
}

/** One line of work or goods with everything its net was computed from, so that it prices to the same figure later. */
export interface PaperLine extends PriceLine {
  readonly description: string
  readonly net: Minor
  readonly working: readonly WorkingStep[]
  /** What the line was told to be. */
  readonly work?: LineWork
  /** On a credit note: which line of the invoice it takes back (from 0), by its quantity or by an amount of it. */
  readonly credits?: { readonly line: number; readonly by: 'quantity' | 'amount' }
}

/** An allowance or charge on the whole document, in major units without a sign. */
export interface PaperAdjustment extends DocumentAmount {
  readonly description: string
}

/** The money of a paper: its lines, how they add up and by which rules. */
export interface PaperMoney {
  readonly lines: readonly PaperLine[]
  readonly allowances?: readonly PaperAdjustment[]
  readonly charges?: readonly PaperAdjustment[]
  readonly priced: Priced
  readonly tax: TaxRules
}

/** A place to sign, or the name of who signed and when. */
export interface PaperSignature {
  readonly name?: string
  readonly at?: string
}

/** One component as it was seen at the counter. */
export interface ConditionNote {
  readonly component: Component
  readonly finish?: Finish
  readonly grade?: Grade
  readonly remark?: string
}

/** One separable thing and who has it; `description` names an `other`. */
export interface PaperBelonging {
  readonly item: Belonging
  readonly position?: Position
  readonly count: number
  readonly custody: Custody
  readonly tag?: string
  readonly description?: string
}

/** The owner's and the shop's copy of what was handed over the counter. */
export interface ClaimCheckContents extends PaperHead {
  readonly kind: 'claim-check'
  /** The fault as the owner told it. */
  readonly fault: string
  readonly condition: readonly ConditionNote[]
  readonly earlierRepairs?: readonly EarlierRepair[]
  readonly springs?: SpringState
  readonly belongings: readonly PaperBelonging[]
  /** An estimated date, never a promise. */
  readonly estimatedOn?: string
  /** What was said of the cost: a fee for the estimate, an expected range, both or neither yet. */
  readonly estimate: {
    readonly fee?: Minor
    /** True when the fee is taken off the price once the owner gives the go-ahead. */
    readonly feeCredited?: boolean
    readonly low?: Minor
    readonly high?: Minor
  }
  /** A deposit paid at the counter. */
  readonly deposit?: Minor
  readonly signedIn?: PaperSignature
  readonly signedOut?: PaperSignature
  readonly cautions: readonly Caution[]
  /** What the QR code says, printed on both halves. */
  readonly qr: string
}

/** What an estimate on several clocks says of one of them; it is agreed and billed by itself. */
export interface EstimateSection extends Pick<PaperMoney, 'lines' | 'priced'> {
  readonly repairNumber: string
  readonly clock?: PaperClock
  readonly supplement: boolean
  readonly agreedBefore?: Minor
  readonly range?: { readonly low: Minor; readonly high: Minor }
  readonly estimatedOn?: string
  readonly cautions: readonly Caution[]
}

/** An estimate, or a supplement to one. */
export interface EstimateContents extends PaperHead, PaperMoney {
  /** Where it speaks of several clocks: each by itself. `lines` are then those of all, `priced` and `range` the sums. */
  readonly sections?: readonly EstimateSection[]
  readonly kind: 'estimate'
  readonly version: number
  /** True when it adds to an estimate already agreed. */
  readonly supplement: boolean
  /** What the supplement adds to: the taxed total agreed before. */
  readonly agreedBefore?: Minor
  /** What it may come to, tax included. */
  readonly range?: { readonly low: Minor; readonly high: Minor }
  readonly validUntil?: string
  /** What may be spent without asking again. */
  readonly limit?: {
    readonly authorised?: Minor
    readonly overrunPercent?: string
    readonly overrun?: Minor
  }
  /** Estimated date once the go-ahead is given. */
  readonly estimatedOn?: string
  readonly notes?: string
  readonly cautions: readonly Caution[]
}

/** Money received (positive) or given back (negative) before a paper was issued. */
export interface PaperPayment {
  readonly on: string
  readonly method: PaymentMethod
  readonly amount: Minor
  /** The receipt it is written on. */
  readonly receiptNumber?: string
}

/** The term a hand-over starts, in one line on the invoice. */
export interface WarrantyLine {
  readonly scope: Scope
  readonly startOn: string
  readonly lastDay: string
  readonly number?: string
}

/** What is owed for a repair. `priced.paid` and `priced.due` speak for the day of issue. */
export interface InvoiceContents extends PaperHead, PaperMoney {
  readonly kind: 'invoice'
  readonly payments: readonly PaperPayment[]
  readonly dueOn?: string
  readonly warranty?: WarrantyLine
  readonly notes?: string
}

/** The correction of an invoice: its figures mirrored, whole or in part. */
export interface CreditNoteContents extends PaperHead, PaperMoney {
  readonly kind: 'credit-note'
  /** Where it is a part: what of each tax the invoice bears, and what was credited of it before. */
  readonly partOf?: readonly TaxPart[]
  readonly invoice: { readonly number: string; readonly issuedOn: string }
  readonly reason?: string
}

/** Money that changed hands: received when positive, given back when negative. */
export interface ReceiptContents extends PaperHead {
  readonly kind: 'receipt'
  readonly method: PaymentMethod
  readonly amount: Minor
  /** Cash laid down, and the change given from it. */
  readonly tendered?: Minor
  readonly change?: Minor
  /** A card slip's or transfer's own reference. */
  readonly reference?: string
  readonly towards: 'invoice' | 'deposit' | 'account'
  /** What of it is more than was owed and is held on the owner's account. */
  readonly toAccount?: Minor
  /** What was taken off the debt beside it (below nothing: added), for cash pays no less than its smallest coin. */
  readonly rounding?: Minor
  /** The day the money changed hands, where it is not the day of issue. */
  readonly onDate?: string
  readonly invoiceNumber?: string
  /** Still owed after it; negative when the shop holds the owner's money. */
  readonly balance: Minor
}

/** What the shop answers for, from when to when. */
export interface WarrantyContents extends PaperHead {
  readonly kind: 'warranty'
  readonly scope: Scope
  readonly startOn: string
  /** The last day covered. */
  readonly lastDay: string
  readonly exclusions: readonly Exclusion[]
  /** What was done, one sentence each. */
  readonly work: readonly string[]
  readonly advice: readonly SetUpAdvice[]
  readonly invoiceNumber?: string
}

/** Everything an issued document says; `kind` tells which. Working papers stand in `working.ts`. */
export type PaperContents =
  | ClaimCheckContents
  | EstimateContents
  | InvoiceContents
  | CreditNoteContents
  | ReceiptContents
  | WarrantyContents
