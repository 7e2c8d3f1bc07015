import type { WarrantyContents } from '../../../core/papers/contents.ts'
import { type Block, section } from '../kit/flow.ts'
import { styles } from '../kit/styles.ts'
import { listed, piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { signatures } from '../parts/signature.ts'
import { type Desk, said, sentence } from '../parts/speech.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** What the shop answers for and from when to when, with how to set the clock up. */
export const warranty: PaperKindPlan<WarrantyContents> = {
  title: ({ number }, { papers }) => papers.titleNumber(papers.titles.warranty, number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
      ...cover(d, contents),
      ...lists(d, contents),
      ...words(d),
    ),
    section(...signatures(d, [{ caption: d.words.papers.receipt.signed }, { caption: d.words.papers.date }])),
  ],
}

const facts = (d: Desk, contents: WarrantyContents): Fact[] => [
  ...commonFacts(d, contents),
  ...(contents.invoiceNumber ? [[d.words.papers.warranty.invoice, contents.invoiceNumber] as const] : []),
]

function cover({ sheet, words, write }: Desk, { scope, startOn, lastDay }: WarrantyContents): Block[] {
  const say = words.papers.warranty
  const term = say.termSaid(write.longDate(startOn), write.longDate(lastDay))
  return [
    ...ruledEntry(sheet, say.scope, [piece(sentence(said(words.scopes, scope)), styles.strong)]),
    ...ruledEntry(sheet, say.term, [piece(term, styles.strong)]),
  ]
}

function lists({ sheet, words }: Desk, { work, exclusions, advice }: WarrantyContents): Block[] {
  const say = words.papers.warranty
  return [
    ...listed(sheet, say.work, work),
    ...listed(
      sheet,
      say.exclusions,
      exclusions.map(code => sentence(said(words.exclusions, code))),
    ),
    ...listed(
      sheet,
      say.advice,
      advice.map(code => said(words.setUpAdvice, code)),
    ),
  ]
}

const words = ({ sheet, words: { papers } }: Desk): Block[] => [
  ...ruledEntry(sheet, papers.warranty.comeback, [
    piece(papers.warranty.comebackSaid),
    piece(papers.warranty.rights, styles.small),
  ]),
]
