import { minor } from '../../core/money/minor.ts'
import type {
  ClaimCheckContents,
  CreditNoteContents,
  EstimateContents,
  InvoiceContents,
  PaperContents,
  PaperHead,
  PaperLine,
  PaperMoney,
  ReceiptContents,
  WarrantyContents,
} from '../../core/papers/contents.ts'
import { lineWorking } from '../../core/pricing/line-working.ts'
import { type PriceLine, priced, type TaxRules } from '../../core/pricing/price.ts'

/** An invented shop, owner and clock: what every sample paper carries. */
export const head: PaperHead = {
  shop: {
    name: 'Tallow & Reed, clocks',
    addressLines: ['4 Saltmarket Row', 'Harwick-on-Lune', 'HX0 0ZZ'],
    phone: '+44 1632 960 110',
    email: 'counter@tallowreed.example',
    taxNumber: 'GB 000 0000 00',
  },
  locale: 'en-GB',
  timeZone: 'Europe/London',
  currency: 'GBP',
  language: 'en',
  number: '1043',
  issuedOn: '2027-03-04',
  owner: {
    name: 'Rosamund Pell',
    addressLines: ['The Old Signal Box', '17 Ferry Lane', 'Harwick-on-Lune'],
    phone: '+44 1632 960 145',
  },
  clock: {
    form: 'bracket',
    maker: 'Jno. Everquill, Harwick',
    serial: '4471',
    trains: 3,
    duration: '8-day',
    dial: 'silvered',
    marks: 'scratched inside the back door: “cleaned 1911”',
  },
  repairNumber: '2231',
}

const tax = [{ code: 'S', rate: '20' }]

/** A fortnight's ordinary work on a three-train clock. */
export const workLines: readonly (PriceLine & { readonly description: string })[] = [
  {
    kind: 'labour',
    description: 'Strip, clean and inspect all three trains',
    quantity: '5.5',
    unit: '62.00',
    taxes: tax,
  },
  {
    kind: 'labour',
    description: 'Bush four worn pivot holes in the chime train',
    quantity: '1.25',
    unit: '62.00',
    taxes: tax,
  },
  {
    kind: 'part',
    description: 'Mainspring, chime, 22 × 0.45 × 1500 mm, hole end',
    quantity: '1',
    unit: '38.40',
    taxes: tax,
  },
  {
    kind: 'part',
    description: 'Suspension spring',
    quantity: '2',
    unit: '4.15',
    unitDiscount: '0.15',
    taxes: tax,
  },
  {
    kind: 'outside',
    description: 'Re-silvering the dial and the chapter ring',
    quantity: '1',
    unit: '145.00',
    charge: '6.50',
    taxes: tax,
  },
  {
    kind: 'fee',
    description: 'Fetching and setting up at the owner’s house',
    quantity: '1',
    unit: '30.00',
    taxes: [{ code: 'Z', rate: '0' }],
  },
]

/** The money of a paper from its lines, priced by the program itself. */
export function moneyOf(
  lines: readonly (PriceLine & { readonly description: string })[],
  {
    paid = '0',
    currency = 'GBP',
    rules = {},
  }: { paid?: string; currency?: string; rules?: Partial<TaxRules> } = {},
): PaperMoney {
  const taxRules: TaxRules = { basis: 'group', mode: 'half-up', inclusive: false, ...rules }
  const result = priced({ currency, tax: taxRules, lines, paid })
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return {
    lines: lines.map(
      (line, i): PaperLine => ({
        ...line,
        net: result.value.lines[i]?.net ?? minor(0),
        working: lineWorking(line),
      }),
    ),
    priced: result.value,
    tax: taxRules,
  }
}

/** A claim check with a silvered dial, spring power and things received, kept and absent. */
export const claimCheck: ClaimCheckContents = {
  ...head,
  kind: 'claim-check',
  number: '2231',
  fault:
    'Stops at the quarter since it was moved in January; the chime runs on for a minute before it stops.',
  condition: [
    {
      component: 'dial',
      finish: 'silver-coloured',
      grade: 'marked',
      remark: 'Worn through at the five, old lacquer crazed.',
    },
    {
      component: 'case',
      finish: 'french-polished',
      grade: 'worn',
      remark: 'Lifting veneer at the left foot.',
    },
    { component: 'glass', grade: 'sound' },
    { component: 'movement', grade: 'worn' },
  ],
  earlierRepairs: ['punch-marks', 'solder'],
  springs: 'partly',
  belongings: [
    { item: 'key', count: 1, custody: 'received', tag: '2231-A' },
    { item: 'pendulum', count: 1, custody: 'received', tag: '2231-B' },
    { item: 'finial', position: 'left', count: 1, custody: 'received', tag: '2231-C' },
    { item: 'finial', position: 'right', count: 1, custody: 'absent' },
    { item: 'case-key', count: 2, custody: 'kept' },
  ],
  estimatedOn: '2027-05-21',
  estimate: { fee: minor(2500), feeCredited: true, low: minor(45000), high: minor(62000) },
  deposit: minor(10000),
  signedIn: { name: 'Rosamund Pell', at: '2027-03-04T10:12:00.000Z' },
  cautions: ['silvered-dial', 'spring-power'],
  qr: 'countwheel:repair:2231',
}

export const estimate: EstimateContents = {
  ...head,
  ...moneyOf(workLines),
  kind: 'estimate',
  number: '1207',
  version: 2,
  supplement: false,
  range: { low: minor(78000), high: minor(92000) },
  validUntil: '2027-04-03',
  limit: { authorised: minor(90000), overrunPercent: '10', overrun: minor(5000) },
  estimatedOn: '2027-05-21',
  notes: 'The gong block is cracked; it is glued, not replaced.',
  cautions: ['silvered-dial', 'spring-power'],
}

export const supplement: EstimateContents = {
  ...head,
  ...moneyOf(workLines.slice(1, 3)),
  kind: 'estimate',
  number: '1207-S1',
  version: 1,
  supplement: true,
  agreedBefore: minor(81582),
  cautions: [],
}

export const invoice: InvoiceContents = {
  ...head,
  ...moneyOf(workLines, { paid: '100.00' }),
  kind: 'invoice',
  payments: [{ on: '2027-03-04', method: 'card', amount: minor(10000), receiptNumber: '512' }],
  dueOn: '2027-06-18',
  warranty: { scope: 'overhaul', startOn: '2027-06-04', lastDay: '2028-06-03', number: '88' },
  notes: 'Thank you for your patience while the chime was tested twice.',
}

export const creditNote: CreditNoteContents = {
  ...head,
  ...moneyOf(workLines.slice(2, 5).map(line => ({ ...line, quantity: `-${line.quantity}` }))),
  kind: 'credit-note',
  number: '31',
  invoice: { number: '1043', issuedOn: '2027-03-04' },
  reason: 'Dial left as it was at the owner’s wish; parts not fitted.',
}

export const receipt: ReceiptContents = {
  ...head,
  kind: 'receipt',
  number: '512',
  method: 'cash',
  amount: minor(10000),
  tendered: minor(12000),
  change: minor(2000),
  reference: 'till slip 88-2',
  towards: 'deposit',
  balance: minor(71582),
}

export const warranty: WarrantyContents = {
  ...head,
  kind: 'warranty',
  number: '88',
  scope: 'overhaul',
  startOn: '2027-06-04',
  lastDay: '2028-06-03',
  exclusions: ['mainsprings', 'lines-chains', 'accident', 'tampering', 'run-down', 'not-transferable'],
  work: workLines.slice(0, 4).map(line => line.description),
  advice: ['level', 'beat', 'wind', 'hands-forward', 'regulate', 'service-again'],
  invoiceNumber: '1043',
}

/** One of every paper. */
export const everyPaper: readonly PaperContents[] = [
  claimCheck,
  estimate,
  supplement,
  invoice,
  creditNote,
  receipt,
  warranty,
]

/** An invoice of `count` lines. */
export const longInvoice = (count: number): InvoiceContents => ({
  ...invoice,
  ...moneyOf(
    Array.from({ length: count }, (_, i) => ({
      kind: 'part' as const,
      description: `Bushing ${i + 1}, bronze, reamed to the pivot`,
      quantity: '1',
      unit: `${i + 1}.05`,
      taxes: tax,
    })),
  ),
})
