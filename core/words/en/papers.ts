import type { LineKind } from '../../pricing/kinds/index.ts'
import type { QuantityUnit } from '../../pricing/kinds/kind.ts'
import { paperSizeNames, paperTitles } from './paper-names.ts'
import { workingPapers } from './working-papers.ts'

/** Everything the papers say beyond the trade's vocabulary. */
export const papers = {
  titles: paperTitles,
  sizes: paperSizeNames,
  ...workingPapers,
  supplementTitle: 'Supplement',
  refundTitle: 'Refund',
  titleNumber: (title: string, number: string) => `${title} ${number}`,
  continued: (title: string) => `${title}, continued`,
  onPage: {
    section: 'The paper itself',
    size: 'On paper of the size',
    open: 'Open by itself',
    notShown: 'This browser shows no PDF inside a page. Open the paper by itself, or save it.',
    drawn: 'As first drawn',
    drawnSaid: (size: string, version: string, kilobytes: string) =>
      `${size}, drawn by Countwheel ${version}, ${kilobytes} kB`,
    notDrawn: 'It is being drawn and will be kept in a moment.',
    hash: 'SHA-256',
    missing:
      'The file of this paper as it was first drawn is missing beside the ledger. What is shown here is drawn again from its frozen contents; a backup may still have the file.',
    damaged:
      'The file of this paper beside the ledger has other bytes than were first drawn. It is left as it is; what is shown here is drawn again from the frozen contents.',
  },
  drawnAgain: 'Drawn again from the frozen contents',
  pageOf: (page: number, pages: number) => `page ${page} of ${pages}`,
  taxNumber: (number: string) => `Tax registration ${number}`,

  owner: 'Owner',
  clock: 'Clock',
  repair: 'Repair',
  date: 'Date',
  notes: 'Notes',
  trains: (count: number) => ['', 'one train', 'two trains', 'three trains'][count] ?? `${count} trains`,
  makerAsRead: (maker: string) => `Maker as read: ${maker}`,
  serial: (serial: string) => `serial ${serial}`,

  claim: {
    fault: 'Fault as told',
    condition: 'Condition',
    conditionOf: (component: string, state: string) => `${component}: ${state}`,
    earlierRepairs: 'Earlier repair',
    springs: 'Springs',
    belongings: 'Belongings',
    inCustody: (custody: string, things: string) => `${custody}: ${things}`,
    tag: (tag: string) => `tag ${tag}`,
    times: (count: number) => `×${count}`,
    noBelongings: 'None on record.',
    estimatedDate: 'Estimated date',
    toBeTold: 'with the estimate',
    expected: 'Expected cost',
    estimateFee: 'Estimate fee',
    deposit: 'Deposit paid',
    keepThis: 'Keep this part: it is asked for when the clock is collected.',
    estimatedNote:
      'The date is an estimate: the clock is tested for days or weeks before it leaves, and a fault starts the test again.',
    feeCredited: 'The estimate fee is taken off the price once the work is agreed.',
    thirdParty:
      'Anyone else collecting the clock brings this part, the owner’s written word and proof of who they are.',
    signedIn: 'Owner, on leaving the clock',
    signedOut: 'Owner, on collecting it',
    cutHere: (title: string) => `${title}: owner’s part below`,
    qrAlt: (payload: string) => `QR code: ${payload}`,
  },

  lines: {
    line: 'No.',
    numbered: (number: number, kind: string) => `${number} · ${kind}`,
    description: 'Work and goods',
    quantity: 'Quantity',
    unit: 'Unit price',
    tax: 'Tax',
    net: 'Net',
    kinds: {
      labour: 'labour',
      part: 'part',
      outside: 'outside work',
      fee: 'fee',
    } satisfies Record<LineKind, string>,
    units: { hour: 'h', piece: '', job: '' } satisfies Record<QuantityUnit, string>,
    unitPer: (unit: string, per: string) => `${unit} per ${per}`,
    unitDiscount: (amount: string) => `less ${amount} each`,
    allowance: (amount: string) => `allowance ${amount}`,
    charge: (amount: string) => `charge ${amount}`,
    taxRate: (code: string, rate: string) => `${code} ${rate}`,
    untaxed: '—',
  },

  totals: {
    sum: 'Sum of lines',
    allowances: 'Less allowances',
    charges: 'Charges',
    taxExclusive: 'Without tax',
    tax: (code: string, rate: string, taxable: string) => `Tax ${code} ${rate} on ${taxable}`,
    allTax: 'Tax together',
    taxInclusive: 'Total',
    credited: 'Total credited',
    paid: 'Paid',
    rounding: 'Rounding',
    due: 'To pay',
    owedToOwner: 'Held for the owner',
    inclusive: 'Prices contain the tax; the net column is without it.',
    rules: {
      basis: { line: 'on each line', group: 'on the sum of each rate' },
      mode: { 'half-up': 'half up', 'half-even': 'half to even', down: 'down' },
      said: (basis: string, mode: string) => `Tax is worked out ${basis} and rounded ${mode}.`,
    },
  },

  estimate: {
    version: 'Version',
    validUntil: 'Valid until',
    estimatedDate: 'Estimated date',
    range: 'May come to',
    rangeSaid: (low: string, high: string) => `${low} to ${high}, tax included`,
    agreedBefore: 'Agreed before',
    agreedWith: 'With this',
    agreedWithSaid: (amount: string) => `${amount} in all, tax included`,
    limit: 'Limit',
    authorised: (amount: string) => `The shop may spend up to ${amount} without asking again.`,
    overrunPercent: (percent: string) =>
      `Beyond the estimate by at most ${percent}; past that, or past a sum the owner names, work stops until the owner has said go ahead.`,
    overrunAmount: (amount: string) =>
      `Beyond the estimate by at most ${amount}; past that, or past a sum the owner names, work stops until the owner has said go ahead.`,
    overrunBoth: (percent: string, amount: string) =>
      `Beyond the estimate by at most ${percent} and at most ${amount}; past that, or past a sum the owner names, work stops until the owner has said go ahead.`,
    goAhead: 'Go-ahead',
    goAheadSaid:
      'Wear that is hidden until the movement is apart may change the work. The owner is asked before anything beyond the limit is done.',
    signGoAhead: 'Owner, go-ahead',
    ofRepair: (repair: string) => `Repair ${repair}`,
    together: 'All together',
  },

  invoice: {
    dueOn: 'To be paid by',
    payments: 'Payments',
    received: (method: string, date: string) => `${method}, ${date}`,
    receiptNumber: (number: string) => `receipt ${number}`,
    warranty: 'Warranty',
    warrantySaid: (scope: string, from: string, to: string) =>
      `${scope}: ${from} to ${to}, the last day included`,
    certificate: (number: string) => `certificate ${number}`,
  },

  credit: {
    corrects: 'Corrects',
    invoiceOf: (number: string, date: string) => `invoice ${number} of ${date}`,
    reason: 'Reason',
  },

  receipt: {
    received: 'Received',
    givenBack: 'Refunded',
    method: 'By',
    reference: 'Reference',
    towards: 'For',
    forInvoice: (number: string) => `invoice ${number}`,
    forDeposit: 'deposit',
    forRepairDeposit: (repair: string) => `deposit on repair ${repair}`,
    forAccount: 'the owner’s account',
    tendered: 'Cash given',
    change: 'Change given',
    toAccount: 'Of it on the owner’s account',
    rounding: 'Rounded in cash',
    onDate: 'Date paid',
    balance: 'Left to pay',
    held: 'Held for the owner',
    signed: 'For the shop',
  },

  warranty: {
    scope: 'Covers',
    term: 'Term',
    termSaid: (from: string, to: string) => `From ${from} to ${to}, the last day included.`,
    work: 'Work done',
    exclusions: 'Does not cover',
    advice: 'Setting it up',
    invoice: 'Invoice',
    comeback: 'Comeback',
    comebackSaid:
      'If it stops or strikes wrongly within the term, bring the clock and this paper; it goes to the head of the queue.',
    rights: 'This adds to the rights the law gives, and takes none away.',
  },

  cautions: 'Cautions',
  cautionsDefer: 'Local codes and licensed practice come first; where they say otherwise, follow them.',
}
