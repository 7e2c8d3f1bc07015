import type { BenchStep, StepCaution } from '../bench/steps.ts'
import type { WorkWeek } from '../calendar/opening.ts'
import type { Caution } from '../cautions/cautions.ts'
import type { Minor } from '../money/minor.ts'
import type { FormerReading, KeptVerdict } from '../run-in/former.ts'
import type {
  Belonging,
  Component,
  EarlierRepair,
  Finish,
  Grade,
  PhotographMoment,
  Position,
  SpringState,
  View,
} from '../vocabulary/intake.ts'
import type { AsFoundMark, PaymentMethod, Scope, SetUpAdvice } from '../vocabulary/work.ts'
import type {
  EstimateContents,
  PaperBelonging,
  PaperClock,
  PaperContents,
  PaperSignature,
  PaperTop,
  WarrantyLine,
} from './contents.ts'

/*
 * Working papers: drawn from the ledger as it stands on the day they are drawn, which is their `issuedOn`. They are not issued and
 * have no series; drawn again later they may say more. What was handed to an owner is frozen as JSON: fields are only ever added, and
 * added as optional ones, as in `contents.ts`; dates, instants and amounts are written as there.
 */

/** What a working paper about one repair carries. */
export interface RepairTop extends PaperTop {
  readonly clock: PaperClock
  readonly repairNumber: string
}

/** What a tag hangs on: the clock itself, or a thing that came with it. */
export interface PaperTag {
  /** Absent on the clock's own tag. */
  readonly part?: {
    readonly item: Belonging
    readonly position?: Position
    readonly description?: string
    readonly count: number
    /** As written at the counter, such as `2231-B`. */
    readonly tag: string
  }
}

/** Tags for the clock and for every separable part the shop holds, one a page. */
export interface TagsContents extends RepairTop {
  readonly kind: 'tags'
  readonly tags: readonly PaperTag[]
  /** What the QR code says. */
  readonly qr: string
}

/** A place on an outline drawing, 0 to 1 from its left and from its top. */
export interface PaperPin {
  readonly view: View
  readonly x: number
  readonly y: number
}

/** One condition note; its number on the drawings is its place in the list. */
export interface ReportNote {
  readonly component: Component
  readonly finish?: Finish
  readonly grade: Grade
  readonly earlierRepair?: EarlierRepair
  readonly remark?: string
  readonly notedOn: string
  readonly pins: readonly PaperPin[]
}

/** A photograph by its hash, with what it shows. */
export interface ReportPhotograph {
  readonly hash: string
  readonly moment: PhotographMoment
  readonly addedOn: string
  readonly remark?: string
  /** The note it belongs to, counted from 1. */
  readonly note?: number
}

/** The clock as it came over the counter. */
export interface ConditionReportContents extends RepairTop {
  readonly kind: 'condition-report'
  readonly takenInOn: string
  readonly fault: string
  readonly springs: SpringState
  readonly notes: readonly ReportNote[]
  readonly photographs: readonly ReportPhotograph[]
  readonly signedIn?: PaperSignature
}

/** A form for the owner's word on an estimate that was sent, with the estimate's own figures. */
export interface GoAheadContents extends Omit<EstimateContents, 'kind' | 'number'> {
  readonly kind: 'go-ahead'
  /** The estimate it speaks of, and the day that was issued. */
  readonly estimate: { readonly number: string; readonly issuedOn: string }
}

/** What goes to the bench with the clock. */
export interface BenchCardContents extends RepairTop {
  readonly kind: 'bench-card'
  readonly fault: string
  readonly scope: Scope
  /** The earlier repair it comes back from. */
  readonly comebackOf?: string
  readonly estimatedOn?: string
  /** The most that may be spent without asking again. */
  readonly most?: Minor
  readonly cautions: readonly Caution[]
  /** What was agreed, one sentence each. */
  readonly agreed: readonly string[]
  readonly steps: readonly {
    readonly code: BenchStep
    readonly cautions: readonly StepCaution[]
    /** Ticked before the card was drawn. */
    readonly done?: true
  }[]
  readonly asFound: readonly { readonly mark: AsFoundMark; readonly text: string }[]
  readonly belongings: readonly PaperBelonging[]
  readonly findings: readonly {
    readonly component: Component
    readonly text: string
    readonly needsWord: boolean
    readonly on: string
  }[]
  readonly qr: string
}

/** A reading as the certificate shows it. */
export type CertificateReading = FormerReading & {
  readonly temperatureC?: number
}

/** How the clock ran on the shelf: its readings, what follows from them, and what was decided. */
export interface RunInContents extends RepairTop {
  readonly kind: 'run-in-certificate'
  readonly startedAt: string
  readonly endedAt?: string
  readonly outcome?: 'passed' | 'restarted' | 'to-bench'
  readonly reason?: string
  readonly decidedBy?: string
  readonly stages: readonly { readonly name: string; readonly fromAt: string; readonly toAt: string }[]
  /** Seconds a day, as text. */
  readonly limitPerDay: string
  /** In order of time; what was struck out or corrected is left out. */
  readonly readings: readonly CertificateReading[]
  /** How steady it had to go, in seconds; absent on papers of before it was asked. */
  readonly steadySeconds?: number
  readonly figures: KeptVerdict
}

/** The letter that says the clock may be fetched. */
export interface ReadyLetterContents extends RepairTop {
  readonly kind: 'ready-letter'
  readonly readyOn: string
  /** True when it goes back as it came: the work was declined. */
  readonly unrepaired: boolean
  readonly toPay: Minor
  readonly belongings: readonly PaperBelonging[]
  readonly week: WorkWeek
}

/** One belonging at the hand-over. */
export interface ReturnedBelonging extends PaperBelonging {
  readonly returned: boolean
  /** Why it did not go back. */
  readonly reason?: string
}

/** What leaves the shop and what the owner should know; before the hand-over a form to tick and sign. */
export interface HandOverContents extends RepairTop {
  readonly kind: 'hand-over'
  readonly handedOver?: {
    readonly at: string
    readonly toName: string
    readonly authority?: string
    readonly unpaidReason?: string
  }
  readonly belongings: readonly ReturnedBelonging[]
  readonly billed: Minor
  readonly paid: Minor
  readonly due: Minor
  readonly advice: readonly SetUpAdvice[]
  readonly warranty?: WarrantyLine
}

/** One entry of an owner's account; what is billed is positive, what is credited or paid negative. */
export interface StatementRow {
  readonly on: string
  readonly entry: 'invoice' | 'credit-note' | 'payment' | 'refund' | 'write-off' | 'rounding'
  /** Of the invoice, credit note or receipt. */
  readonly number?: string
  readonly method?: PaymentMethod
  readonly repairNumber?: string
  readonly amount: Minor
  /** After this entry; negative when the shop holds the owner's money. */
  readonly balance: Minor
}

/** An owner's account to the day it is drawn, or of a period. */
export interface StatementContents extends PaperTop {
  readonly kind: 'statement'
  readonly period?: { readonly from: string; readonly to: string }
  /** What was owed before the first entry. */
  readonly before: Minor
  readonly rows: readonly StatementRow[]
  readonly billed: Minor
  readonly paid: Minor
  /** Given up, or not to be paid in cash. */
  readonly writtenOff: Minor
  readonly balance: Minor
}

/** A reminder that a clock still stands in the shop; what local law asks for is left blank for the shop to fill in. */
export interface UncollectedLetterContents extends RepairTop {
  readonly kind: 'uncollected-letter'
  readonly readyOn: string
  readonly unrepaired: boolean
  /** Days since then. */
  readonly days: number
  /** When the owner was last told. */
  readonly toldOn?: string
  readonly toPay: Minor
  readonly belongings: readonly PaperBelonging[]
}

/** Everything a working paper says. */
export type WorkingContents =
  | TagsContents
  | ConditionReportContents
  | GoAheadContents
  | BenchCardContents
  | RunInContents
  | ReadyLetterContents
  | HandOverContents
  | StatementContents
  | UncollectedLetterContents

/** Everything any paper says, issued or working. */
export type AnyContents = PaperContents | WorkingContents
