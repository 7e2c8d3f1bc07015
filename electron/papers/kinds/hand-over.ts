import { minor } from '../../../core/money/minor.ts'
import type { HandOverContents, ReturnedBelonging } from '../../../core/papers/working.ts'
import { type Block, section, space } from '../kit/flow.ts'
import { styles } from '../kit/styles.ts'
import { thingText } from '../parts/belongings.ts'
import { listed, piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { signatures } from '../parts/signature.ts'
import { type Desk, said, sentence } from '../parts/speech.ts'
import { kept } from '../parts/table.ts'
import { tickList } from '../parts/tick.ts'
import { type Total, totals } from '../parts/totals.ts'
import { warrantyText } from './invoice.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** What leaves the shop and what the owner should know; before the hand-over a form to tick and sign. */
export const handOver: PaperKindPlan<HandOverContents> = {
  title: ({ repairNumber, handedOver }, { papers }) =>
    papers.titleNumber(handedOver ? papers.titles['hand-over'] : papers.handOver.titleForm, repairNumber),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, commonFacts(d, contents)),
      ...clock(d, contents),
      ...whom(d, contents),
      ...givenBack(d, contents),
    ),
    section(...money(d, contents)),
    section(...afterwards(d, contents)),
    section(
      ...kept(ruledEntry(d.sheet, '', [piece(d.words.papers.handOver.received)])),
      ...signatures(d, [
        { caption: d.words.papers.handOver.signOwner },
        { caption: d.words.papers.handOver.signShop },
        { caption: d.words.papers.date },
      ]),
    ),
  ],
}

function whom({ sheet, words, write }: Desk, { handedOver }: HandOverContents): Block[] {
  if (!handedOver) return []
  const say = words.papers.handOver
  const { toName, at, authority } = handedOver
  return [
    ...ruledEntry(sheet, say.handedTo, [piece(say.at(toName, write.instant(at)), styles.strong)]),
    ...(authority ? ruledEntry(sheet, say.authority, [piece(authority)]) : []),
  ]
}

/** The clock and everything the shop held, with a box each: ticked where it went back. */
function givenBack(d: Desk, { handedOver, belongings }: HandOverContents): Block[] {
  const say = d.words.papers.handOver
  const lines = belongings.map(thing => ({
    ticked: thing.returned,
    pieces: [piece(sentence(thingText(d, thing))), piece(whyNot(d, thing), styles.small)],
  }))
  const clockItself = { ticked: handedOver !== undefined, pieces: [piece(say.clockItself)] }
  return tickList(d.sheet, say.returned, [clockItself, ...lines])
}

const whyNot = ({ words }: Desk, { returned, reason }: ReturnedBelonging): string =>
  !returned && reason ? words.papers.handOver.notReturned(reason) : ''

/** What was billed and paid; nothing while nothing has been billed and the clock is still here. */
const money = (d: Desk, contents: HandOverContents): Block[] =>
  contents.billed === 0 && !contents.handedOver ? [] : [...totals(d, figures(d, contents)), space(6)]

function figures({ words, write }: Desk, { billed, paid, due }: HandOverContents): Total[] {
  const say = words.papers.handOver
  const left = due < 0 ? { label: say.held, amount: minor(-due) } : { label: say.due, amount: due }
  return [
    { label: say.billed, amount: write.amount(billed) },
    { label: say.paid, amount: write.amount(paid) },
    { label: left.label, amount: write.money(left.amount), final: true },
  ]
}

function afterwards(d: Desk, { handedOver, warranty, advice }: HandOverContents): Block[] {
  const { sheet, words } = d
  const say = words.papers.handOver
  return [
    ...(handedOver?.unpaidReason
      ? ruledEntry(sheet, say.unpaidReason, [piece(handedOver.unpaidReason)])
      : []),
    ...(warranty ? ruledEntry(sheet, words.papers.invoice.warranty, [piece(warrantyText(d, warranty))]) : []),
    ...listed(
      sheet,
      say.advice,
      advice.map(code => said(words.setUpAdvice, code)),
    ),
  ]
}
