import type { UncollectedLetterContents } from '../../../core/papers/working.ts'
import { section, space } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { cutLine } from '../parts/cut-line.ts'
import { listed, piece } from '../parts/entry.ts'
import { clock } from '../parts/head.ts'
import { belongingsSaid, letterEnd, letterHead, paragraph, toPayText } from '../parts/letter.ts'
import { type Desk, said } from '../parts/speech.ts'
import { writingLines } from '../parts/writing.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** A reminder that a clock still stands in the shop, with blanks for what local law asks, and a prompt to the shop to cut off. */
export const uncollectedLetter: PaperKindPlan<UncollectedLetterContents> = {
  title: (_, { papers }) => papers.letter.waitingTitle,
  sections: (d, contents, heading) => [
    section(...letterHead(d, contents, heading), ...says(d, contents)),
    letterEnd(d, contents.shop.name),
  ],
  slip: d => ({
    cut: cutLine(d, d.words.papers.uncollected.cut),
    sections: [section(...prompt(d))],
  }),
}

function says(d: Desk, contents: UncollectedLetterContents) {
  const { letter, uncollected } = d.words.papers
  const { clock: described, readyOn, days, toldOn, toPay, belongings, owner, shop } = contents
  const reached = [shop.phone, shop.email].filter(Boolean).join(', ')
  const told = toldOn ? uncollected.told(d.write.date(toldOn)) : ''
  const waiting = uncollected.waiting(said(d.words.forms, described.form), d.write.date(readyOn), days)
  return [
    ...paragraph(d, letter.dear(owner.name)),
    ...paragraph(d, [waiting, told].filter(Boolean).join(' ')),
    ...paragraph(d, toPayText(d, toPay)),
    ...belongingsSaid(d, belongings),
    ...clock(d, contents),
    space(5),
    ...paragraph(d, uncollected.please),
    ...writingLines(d.sheet, '', 1, 14),
    space(5),
    ...paragraph(d, uncollected.otherwise),
    ...writingLines(d.sheet, '', 2, 18),
    space(5),
    ...(reached ? paragraph(d, uncollected.contact(reached)) : []),
    ...paragraph(d, letter.regards),
  ]
}

function prompt(d: Desk) {
  const { sheet, words } = d
  const say = words.papers.uncollected
  const heading = { tag: 'H1' as const, x: sheet.body, width: sheet.width }
  return [
    ...row(sheet, [{ ...heading, pieces: [piece(say.promptHeading, styles.heading)] }], {
      above: 2,
      below: 2,
    }),
    ...listed(sheet, '', say.prompt),
  ]
}
