import type { EstimateContents } from '../../../core/papers/contents.ts'
import { type Block, section } from '../kit/flow.ts'
import { cautions } from '../parts/cautions.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { estimateMoney, openEntries } from '../parts/estimate-money.ts'
import { clock, commonFacts, type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { signatures } from '../parts/signature.ts'
import type { Desk } from '../parts/speech.ts'
import { kept } from '../parts/table.ts'
import { taxRules } from '../parts/totals.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** What the work is expected to cost, with the working of every line; or a supplement to it. */
export const estimate: PaperKindPlan<EstimateContents> = {
  title: ({ number, supplement }, { papers }) =>
    papers.titleNumber(supplement ? papers.supplementTitle : papers.titles.estimate, number),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
    ),
    ...estimateMoney(d, contents, true),
    section(...taxRules(d, contents), ...limitEntries(d, contents), ...cautions(d, contents.cautions)),
    section(
      ...kept(
        ruledEntry(d.sheet, d.words.papers.estimate.goAhead, [piece(d.words.papers.estimate.goAheadSaid)]),
      ),
      ...signatures(d, [{ caption: d.words.papers.estimate.signGoAhead }, { caption: d.words.papers.date }]),
    ),
  ],
}

function facts(d: Desk, contents: EstimateContents): Fact[] {
  const say = d.words.papers.estimate
  return [
    ...commonFacts(d, contents),
    [say.version, String(contents.version)],
    ...(contents.validUntil ? [[say.validUntil, d.write.date(contents.validUntil)] as const] : []),
    ...(contents.estimatedOn ? [[say.estimatedDate, d.write.date(contents.estimatedOn)] as const] : []),
  ]
}

type Terms = Pick<EstimateContents, 'agreedBefore' | 'range' | 'limit' | 'notes' | 'priced'>

/** What was agreed before, what it may come to, how far the shop may go, and what the owner should know. */
export function limitEntries(d: Desk, contents: Terms): Block[] {
  const { sheet, words } = d
  const { agreedBefore, range, notes, priced } = contents
  const entries: readonly (readonly [string, string | undefined])[] = [
    [words.papers.estimate.limit, limitText(d, contents)],
    [words.papers.notes, notes],
  ]
  return [
    ...openEntries(d, {
      priced,
      ...(agreedBefore === undefined ? {} : { agreedBefore }),
      ...(range ? { range } : {}),
    }),
    ...entries.flatMap(([label, text]) => (text ? ruledEntry(sheet, label, [piece(text)]) : [])),
  ]
}

function limitText({ words, write }: Desk, { limit }: Terms): string {
  const say = words.papers.estimate
  const percent = limit?.overrunPercent === undefined ? undefined : write.percent(limit.overrunPercent)
  const amount = limit?.overrun === undefined ? undefined : write.money(limit.overrun)
  const sentences = [
    limit?.authorised === undefined ? undefined : say.authorised(write.money(limit.authorised)),
    percent && amount ? say.overrunBoth(percent, amount) : undefined,
    percent && !amount ? say.overrunPercent(percent) : undefined,
    amount && !percent ? say.overrunAmount(amount) : undefined,
  ]
  return sentences.filter(Boolean).join(' ')
}
