import type { ConditionReportContents, ReportNote } from '../../../core/papers/working.ts'
import { type Section, section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { photographs } from '../parts/photographs.ts'
import { signatures } from '../parts/signature.ts'
import { type Desk, said, sentence } from '../parts/speech.ts'
import { table } from '../parts/table.ts'
import { viewBlocks } from '../parts/views.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** The clock as it came over the counter: outline drawings with numbered pins, the notes, the photographs. */
export const conditionReport: PaperKindPlan<ConditionReportContents> = {
  title: ({ repairNumber }, { papers }) =>
    papers.titleNumber(papers.titles['condition-report'], repairNumber),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
      ...ruledEntry(d.sheet, d.words.papers.condition.fault, [piece(contents.fault)]),
      ...viewBlocks(d, contents),
    ),
    notes(d, contents),
    section(...photographs(d, contents.photographs)),
    section(
      ...ruledEntry(d.sheet, '', [piece(d.words.papers.condition.agree)], { keep: true }),
      ...signatures(d, [
        { caption: d.words.papers.claim.signedIn, signed: contents.signedIn },
        { caption: d.words.papers.receipt.signed },
      ]),
    ),
  ],
}

const facts = (d: Desk, contents: ConditionReportContents): Fact[] => [
  ...commonFacts(d, contents),
  [d.words.papers.condition.takenIn, d.write.date(contents.takenInOn)],
  [d.words.papers.condition.springs, said(d.words.springStates, contents.springs)],
]

/** The numbered notes; the numbers are those on the drawings. */
function notes(d: Desk, { notes: noted }: ConditionReportContents): Section {
  const { sheet, words } = d
  const say = words.papers.condition
  if (noted.length === 0) return section(...ruledEntry(sheet, '', [piece(say.nothing)]))
  return table(
    sheet,
    say.note,
    [{ head: say.component, width: 84 }, { head: say.seen }, { head: say.pinned, width: 74 }],
    noted.map((note, i) => ({
      margin: String(i + 1),
      cells: [
        [piece(sentence(said(words.components, note.component)))],
        [piece(seenText(d, note))],
        [piece(pinnedText(d, note))],
      ],
    })),
  )
}

function seenText({ words }: Desk, { finish, grade, earlierRepair, remark }: ReportNote): string {
  const state = [
    finish && said(words.finishes, finish),
    said(words.grades, grade),
    earlierRepair && said(words.earlierRepairs, earlierRepair),
  ]
  return [sentence(state.filter(Boolean).join(', ')), remark].filter(Boolean).join('. ')
}

const pinnedText = ({ words }: Desk, { pins }: ReportNote): string =>
  [...new Set(pins.map(pin => words.papers.condition.views[pin.view]))].join(', ')
