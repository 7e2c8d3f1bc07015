import type { Needs, Sentences } from './sentence.ts'
/** What stands in an e-invoice beside the paper’s own words. */
export const eInvoice = {
  terms: 'Payable on receipt.',
  exempt: 'Supplied without tax.',
  adjustment: 'Adjustment',
  name: 'E-invoice',
  link: 'save as XML (EN 16931)',
}

/** Why there is no e-invoice of a paper, and what to do. */
export const eInvoiceProblems = {
  'eInvoice.off': () => 'E-invoices are not turned on: see the Shop page.',
  'eInvoice.notBilled': () => 'Only an invoice or a credit note can be had as an e-invoice.',
  'eInvoice.country': () =>
    'An e-invoice names the shop’s country, and this paper was issued without it. Papers from now on have it.',
  'eInvoice.taxNumber': () =>
    'An e-invoice names the shop’s tax registration, and this paper was issued without one. Enter it on the Shop page; papers from then on have it.',
  'eInvoice.currency': ({ currency }: Needs<'currency'>) =>
    `E-invoices have amounts of at most two decimal places, ${currency} has more.`,
  'eInvoice.severalTaxes': () =>
    'An e-invoice can name one tax on a line only, and this line bears more. Setting the shop’s taxes to be added up before rounding makes them one.',
  'eInvoice.taxRounding': ({ rate }: Needs<'rate'>) =>
    `The tax at ${rate} % on this paper is not its amount without tax × the rate, rounded once, as e-invoices demand; an e-invoice may not say another sum than the paper. Tax reckoned once for the whole paper, half up, on prices without tax, always fits.`,
} satisfies Sentences
