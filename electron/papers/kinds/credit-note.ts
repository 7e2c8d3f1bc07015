import type { CreditNoteContents } from '../../../core/papers/contents.ts'
import { section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { moneyLines } from '../parts/money-lines.ts'
import { type Desk, sentence } from '../parts/speech.ts'
import { priceTotals, taxRules, totals } from '../parts/totals.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** The correction of an invoice, its figures mirrored. */
export const creditNote: PaperKindPlan<CreditNoteContents> = {
  title: ({ number }, { papers }) => papers.titleNumber(papers.titles['credit-note'], number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, commonFacts(d, contents)),
      ...clock(d, contents),
      ...corrected(d, contents),
    ),
    moneyLines(d, contents, false),
    section(...totals(d, priceTotals(d, contents, d.words.papers.totals.credited))),
    section(...taxRules(d, contents)),
  ],
}

function corrected({ sheet, words, write }: Desk, { invoice, reason }: CreditNoteContents) {
  const say = words.papers.credit
  const which = say.invoiceOf(invoice.number, write.date(invoice.issuedOn))
  return [
    ...ruledEntry(sheet, say.corrects, [piece(sentence(which))]),
    ...(reason ? ruledEntry(sheet, say.reason, [piece(reason)]) : []),
  ]
}
