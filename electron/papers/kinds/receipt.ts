import { minor } from '../../../core/money/minor.ts'
import type { ReceiptContents } from '../../../core/papers/contents.ts'
import { type Block, section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { signatures } from '../parts/signature.ts'
import { type Desk, said, sentence } from '../parts/speech.ts'
import { type Total, totals } from '../parts/totals.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** Money received, or given back. */
export const receipt: PaperKindPlan<ReceiptContents> = {
  title: ({ number, amount }, { papers }) =>
    papers.titleNumber(amount < 0 ? papers.refundTitle : papers.titles.receipt, number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, commonFacts(d, contents)),
      ...clock(d, contents),
      ...how(d, contents),
    ),
    section(...totals(d, figures(d, contents))),
    section(...signatures(d, [{ caption: d.words.papers.receipt.signed }, { caption: d.words.papers.date }])),
  ],
}

function how({ sheet, words, write }: Desk, contents: ReceiptContents): Block[] {
  const say = words.papers.receipt
  const { method, reference, onDate } = contents
  return [
    ...ruledEntry(sheet, say.towards, [piece(sentence(towardsText(words.papers.receipt, contents)))]),
    ...ruledEntry(sheet, say.method, [piece(sentence(said(words.paymentMethods, method)))]),
    ...(reference ? ruledEntry(sheet, say.reference, [piece(reference)]) : []),
    ...(onDate ? ruledEntry(sheet, say.onDate, [piece(write.date(onDate))]) : []),
  ]
}

function towardsText(say: Desk['words']['papers']['receipt'], contents: ReceiptContents): string {
  const { towards, invoiceNumber, repairNumber } = contents
  if (towards === 'invoice') return say.forInvoice(invoiceNumber ?? '')
  if (towards === 'account') return say.forAccount
  return repairNumber ? say.forRepairDeposit(repairNumber) : say.forDeposit
}

function figures({ words, write }: Desk, contents: ReceiptContents): Total[] {
  const say = words.papers.receipt
  const { amount, tendered, change, toAccount, rounding, balance } = contents
  return [
    ...(tendered === undefined ? [] : [{ label: say.tendered, amount: write.amount(tendered) }]),
    ...(change === undefined ? [] : [{ label: say.change, amount: write.amount(change) }]),
    { label: amount < 0 ? say.givenBack : say.received, amount: write.money(amount), final: true },
    ...(toAccount === undefined ? [] : [{ label: say.toAccount, amount: write.amount(toAccount) }]),
    ...(rounding === undefined ? [] : [{ label: say.rounding, amount: write.amount(rounding) }]),
    balance < 0
      ? { label: say.held, amount: write.money(minor(-balance)) }
      : { label: say.balance, amount: write.money(balance) },
  ]
}
