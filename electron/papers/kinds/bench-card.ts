import type { BenchCardContents } from '../../../core/papers/working.ts'
import { type Block, beside, section } from '../kit/flow.ts'
import { row, ruleBlock } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { thingText } from '../parts/belongings.ts'
import { cautions } from '../parts/cautions.ts'
import { entry, hairline, piece, ruledEntry } from '../parts/entry.ts'
import { type Fact, factRows } from '../parts/head.ts'
import { qr } from '../parts/qr.ts'
import { clockLine, clockMarks, type Desk, said, sentence } from '../parts/speech.ts'
import { kept } from '../parts/table.ts'
import { tickList } from '../parts/tick.ts'
import { writingLines } from '../parts/writing.ts'
import type { PaperKindPlan } from './paper-kind.ts'

const qrSide = 66
const big = { above: 4, below: 4 }

/** What goes to the bench with the clock: cautions first, then what to do, what came with it, and room to write; in large type. */
export const benchCard: PaperKindPlan<BenchCardContents> = {
  title: ({ repairNumber }, { papers }) => papers.titleNumber(papers.titles['bench-card'], repairNumber),
  sections: (d, contents, heading) => [
    section(...head(d, contents, heading), ...cautions(d, contents.cautions, styles.big)),
    section(...work(d, contents)),
    section(...steps(d, contents)),
    section(...found(d, contents)),
    section(
      ...kept(writingLines(d.sheet, d.words.papers.bench.notes, 2, 30)),
      ...writingLines(d.sheet, '', 8, 30),
    ),
  ],
}

/** Number and clock, the code at the right. */
function head(d: Desk, contents: BenchCardContents, heading: string): Block[] {
  const { sheet, words } = d
  const code = qr(sheet, contents.qr, words.papers.claim.qrAlt(contents.qr), {
    right: sheet.right,
    side: qrSide,
  })
  const width = sheet.width - qrSide - 24
  const cell = (tag: 'H1' | 'P', pieces: ReturnType<typeof piece>[]) => ({
    tag,
    x: sheet.body,
    width,
    pieces,
  })
  const whose = [
    piece(clockLine(d, contents.clock), styles.bigStrong),
    piece(clockMarks(d, contents.clock), styles.body),
    piece(contents.owner.name, styles.big),
  ]
  const named = [
    ...row(sheet, [cell('H1', [piece(heading, styles.title)])], { above: 2, below: 2 }),
    ...row(sheet, [cell('P', whose)], { below: 6 }),
  ]
  return [
    beside(named, [code]),
    ruleBlock(sheet, { kind: 'line', from: sheet.left, to: sheet.right }),
    ...factRows(sheet, facts(d, contents), { x: sheet.body, right: sheet.right }),
    ruleBlock(sheet, hairline(sheet)),
  ]
}

function facts({ words, write }: Desk, contents: BenchCardContents): Fact[] {
  const { papers } = words
  const { scope, comebackOf, estimatedOn, most, issuedOn } = contents
  const known: readonly (readonly [string, string | undefined])[] = [
    [papers.drawnOn, write.date(issuedOn)],
    [papers.bench.scope, sentence(said(words.scopes, scope))],
    [papers.bench.comebackLabel, comebackOf && papers.bench.comeback(comebackOf)],
    [papers.estimate.estimatedDate, estimatedOn && write.date(estimatedOn)],
    [papers.bench.spend, most === undefined ? undefined : papers.bench.spendSaid(write.money(most))],
  ]
  return known.flatMap(([label, value]) => (value ? [[label, value] as const] : []))
}

function work({ sheet, words }: Desk, { fault, agreed }: BenchCardContents): Block[] {
  const { claim, bench } = words.papers
  return [
    ...ruledEntry(sheet, claim.fault, [piece(fault, styles.big)], big),
    ...(agreed.length > 0
      ? ruledEntry(
          sheet,
          bench.agreed,
          agreed.map(text => piece(text, styles.big)),
          big,
        )
      : []),
  ]
}

/** Tasks to tick, each with the cautions that belong to it. */
function steps({ sheet, words }: Desk, contents: BenchCardContents): Block[] {
  const lines = contents.steps.map(({ code, cautions, done = false }) => ({
    ticked: done,
    pieces: [
      piece(said(words.bench.steps, code), styles.big),
      ...cautions.map(one => piece(said(words.stepCautions, one), styles.body)),
    ],
  }))
  return tickList(sheet, words.papers.bench.tasks, lines, big)
}

function found(d: Desk, { asFound, belongings, findings }: BenchCardContents): Block[] {
  const { sheet, words, write } = d
  const say = words.papers.bench
  const marks = asFound.map(({ mark, text }) =>
    piece(say.asFoundOf(sentence(said(words.asFoundMarks, mark)), text), styles.big),
  )
  const things = belongings.filter(({ custody }) => custody === 'received')
  const nothing = [piece(say.nothingFound, styles.big)]
  return [
    ...ruledEntry(sheet, say.asFound, marks.length > 0 ? marks : nothing, big),
    ...tickList(
      sheet,
      say.belongings,
      things.map(thing => ({ pieces: [piece(sentence(thingText(d, thing)), styles.big)] })),
      big,
    ),
    ...(findings.length > 0
      ? findings.flatMap(({ component, text, needsWord, on }, i) =>
          entry(
            sheet,
            i === 0 ? say.findings : '',
            [
              piece(say.findingOf(sentence(said(words.components, component)), text), styles.big),
              piece(
                [write.date(on), needsWord ? say.needsWord : ''].filter(Boolean).join(' · '),
                styles.small,
              ),
            ],
            { ...big, ruleBelow: i === findings.length - 1 ? hairline(sheet) : undefined },
          ),
        )
      : ruledEntry(sheet, say.findings, nothing, big)),
  ]
}
