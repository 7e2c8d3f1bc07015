import { minor } from '../../../core/money/minor.ts'
import type { InvoiceContents, WarrantyLine } from '../../../core/papers/contents.ts'
import { type Section, section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { moneyLines } from '../parts/money-lines.ts'
import { type Desk, said, sentence } from '../parts/speech.ts'
import { priceTotals, type Total, taxRules, totals } from '../parts/totals.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** What is owed for a repair, what was paid of it, and the warranty it starts. */
export const invoice: PaperKindPlan<InvoiceContents> = {
  title: ({ number }, { papers }) => papers.titleNumber(papers.titles.invoice, number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
    ),
    moneyLines(d, contents, false),
    section(
      ...totals(d, [
        ...priceTotals(d, contents, d.words.papers.totals.taxInclusive),
        ...settled(d, contents),
      ]),
    ),
    section(...taxRules(d, contents)),
    afterword(d, contents),
  ],
}

const facts = (d: Desk, contents: InvoiceContents): Fact[] => [
  ...commonFacts(d, contents),
  ...(contents.dueOn ? [[d.words.papers.invoice.dueOn, d.write.date(contents.dueOn)] as const] : []),
]

/** What was paid before, cash rounding, and what is left. */
function settled({ words, write }: Desk, { payments, priced }: InvoiceContents): Total[] {
  const say = words.papers
  const paid = payments.map(({ on, method, amount, receiptNumber }) => ({
    label: [
      say.invoice.received(sentence(said(words.paymentMethods, method)), write.date(on)),
      receiptNumber && say.invoice.receiptNumber(receiptNumber),
    ]
      .filter(Boolean)
      .join(', '),
    amount: write.amount(amount),
  }))
  return [
    ...paid,
    ...(payments.length === 1 || priced.paid === 0
      ? []
      : [{ label: say.totals.paid, amount: write.amount(priced.paid) }]),
    ...(priced.rounding === 0 ? [] : [{ label: say.totals.rounding, amount: write.amount(priced.rounding) }]),
    priced.due < 0
      ? { label: say.totals.owedToOwner, amount: write.money(minor(-priced.due)), final: true }
      : { label: say.totals.due, amount: write.money(priced.due), final: true },
  ]
}

/** The term and where its certificate is, in one line. */
export function warrantyText(
  { words, write }: Desk,
  { scope, startOn, lastDay, number }: WarrantyLine,
): string {
  const say = words.papers.invoice
  const term = say.warrantySaid(sentence(said(words.scopes, scope)), write.date(startOn), write.date(lastDay))
  return [term, number && say.certificate(number)].filter(Boolean).join(', ')
}

function afterword(d: Desk, { warranty, notes }: InvoiceContents): Section {
  const { sheet, words } = d
  return section(
    ...(warranty ? ruledEntry(sheet, words.papers.invoice.warranty, [piece(warrantyText(d, warranty))]) : []),
    ...(notes ? ruledEntry(sheet, words.papers.notes, [piece(notes)]) : []),
  )
}
