import type { WorkWeek } from '../../../core/calendar/opening.ts'
import type { ReadyLetterContents } from '../../../core/papers/working.ts'
import { section, space } from '../kit/flow.ts'
import { styles } from '../kit/styles.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { clock } from '../parts/head.ts'
import { belongingsSaid, letterEnd, letterHead, paragraph, toPayText } from '../parts/letter.ts'
import { type Desk, said } from '../parts/speech.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** The letter that says the clock may be fetched. */
export const readyLetter: PaperKindPlan<ReadyLetterContents> = {
  title: (_, { papers }) => papers.letter.readyTitle,
  sections: (d, contents, heading) => [
    section(...letterHead(d, contents, heading), ...says(d, contents)),
    letterEnd(d, contents.shop.name),
  ],
}

function says(d: Desk, contents: ReadyLetterContents) {
  const { letter } = d.words.papers
  const { clock: described, readyOn, unrepaired, toPay, belongings, owner, week } = contents
  const ready = unrepaired ? letter.readyUnrepaired : letter.ready
  const hours = openHours(d, week)
  return [
    ...paragraph(d, letter.dear(owner.name)),
    ...paragraph(d, ready(said(d.words.forms, described.form), d.write.date(readyOn))),
    ...(unrepaired ? [] : paragraph(d, letter.testing)),
    ...paragraph(d, toPayText(d, toPay)),
    ...paragraph(d, letter.bring),
    ...belongingsSaid(d, belongings),
    ...(hours.length > 0
      ? ruledEntry(
          d.sheet,
          letter.hours,
          hours.map(text => piece(text, styles.letter)),
        )
      : []),
    ...clock(d, contents),
    space(10),
    ...paragraph(d, letter.regards),
  ]
}

/** 5 January 1970 was a Monday: the day a weekday's name is asked of. */
const dayNamed = (day: number): string => `1970-01-${String(4 + day).padStart(2, '0')}`

/** The week in lines, days with the same hours together: `Monday, Tuesday 09:00–12:30, 13:00–17:00`. */
function openHours({ words, write }: Desk, week: WorkWeek): string[] {
  const { letter } = words.papers
  const days = [1, 2, 3, 4, 5, 6, 7].map(day => ({
    name: write.weekday(dayNamed(day)),
    times: week
      .filter(open => open.day === day)
      .map(({ from, to }) => letter.span(from, to))
      .join(', '),
  }))
  const byTimes = Map.groupBy(
    days.filter(({ times }) => times),
    ({ times }) => times,
  )
  return [...byTimes].map(([times, group]) => letter.hoursOf(group.map(({ name }) => name).join(', '), times))
}
