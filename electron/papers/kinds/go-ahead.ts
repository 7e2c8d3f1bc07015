import type { GoAheadContents } from '../../../core/papers/working.ts'
import { type Block, section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { estimateMoney } from '../parts/estimate-money.ts'
import { clock, commonFacts, type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { signatures } from '../parts/signature.ts'
import type { Desk } from '../parts/speech.ts'
import { kept } from '../parts/table.ts'
import { tickList } from '../parts/tick.ts'
import { taxRules } from '../parts/totals.ts'
import { writingLines } from '../parts/writing.ts'
import { limitEntries } from './estimate.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** The owner's word on an estimate, to tick and sign. */
export const goAhead: PaperKindPlan<GoAheadContents> = {
  title: ({ estimate, supplement }, { papers }) =>
    supplement ? papers.goAhead.titleOfSupplement(estimate.number) : papers.goAhead.titleOf(estimate.number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
    ),
    ...estimateMoney(d, contents, false),
    section(...taxRules(d, contents), ...limitEntries(d, contents)),
    ...choices(d, contents).map(blocks => section(...kept(blocks))),
    section(...signed(d)),
  ],
}

function facts(d: Desk, contents: GoAheadContents): Fact[] {
  const { papers } = d.words
  const { estimate, validUntil, estimatedOn } = contents
  return [
    ...commonFacts(d, contents),
    [papers.goAhead.estimate, papers.goAhead.of(estimate.number, d.write.date(estimate.issuedOn))],
    ...(validUntil ? [[papers.estimate.validUntil, d.write.date(validUntil)] as const] : []),
    ...(estimatedOn ? [[papers.estimate.estimatedDate, d.write.date(estimatedOn)] as const] : []),
  ]
}

type Asked = Pick<GoAheadContents, 'range' | 'priced'>

/** What the owner may say, clock by clock where there are several, and what it means. */
function choices(d: Desk, contents: GoAheadContents): Block[][] {
  const { sheet, words } = d
  const say = words.papers.goAhead
  const meant = ruledEntry(sheet, words.papers.estimate.goAhead, [
    piece(words.papers.estimate.goAheadSaid),
    piece(contents.sections ? say.returnAll : say.return),
  ])
  return [
    ...(contents.sections?.map(one => ofClock(d, say.chooseOn(one.repairNumber), one, 1)) ?? [
      ofClock(d, say.choose, contents, 2),
    ]),
    meant,
  ]
}

/** What the owner may say to one clock, with room to write a sum and a part of the work. */
function ofClock(
  { sheet, words, write }: Desk,
  label: string,
  { range, priced }: Asked,
  lines: number,
): Block[] {
  const say = words.papers.goAhead
  const most = write.money(range?.high ?? priced.taxInclusive)
  const line = (text: string) => ({ pieces: [piece(text)] })
  return [
    ...tickList(sheet, label, [line(say.yes(most)), line(say.limit)], { ruleBelow: undefined }),
    ...writingLines(sheet, '', 1, 18),
    ...tickList(sheet, '', [line(say.part)], { ruleBelow: undefined }),
    ...writingLines(sheet, '', lines, 20),
    ...tickList(sheet, '', [line(say.no)]),
  ]
}

const signed = (d: Desk): Block[] =>
  signatures(d, [
    { caption: d.words.papers.estimate.signGoAhead },
    { caption: d.words.papers.goAhead.name },
    { caption: d.words.papers.date },
  ])
