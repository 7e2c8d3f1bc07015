import { type Minor, minor } from '../../../core/money/minor.ts'
import type { StatementContents, StatementRow } from '../../../core/papers/working.ts'
import { formats } from '../../../core/words/format.ts'
import { type Section, section } from '../kit/flow.ts'
import { piece, ruledEntry } from '../parts/entry.ts'
import { type Fact, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { type Desk, said } from '../parts/speech.ts'
import { type Column, table, widest } from '../parts/table.ts'
import { type Total, totals } from '../parts/totals.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** An owner's account: what was billed and paid, with the balance after each entry. */
export const statement: PaperKindPlan<StatementContents> = {
  title: ({ issuedOn, locale, timeZone, currency }, { papers }) =>
    papers.statement.titleOn(formats({ locale, timeZone, currency }).date(issuedOn)),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
    ),
    entries(d, contents),
    section(...totals(d, figures(d, contents))),
  ],
}

function facts({ words, write }: Desk, { issuedOn, period }: StatementContents): Fact[] {
  const say = words.papers.statement
  return [
    [words.papers.date, write.date(issuedOn)],
    ...(period
      ? [[say.period, say.periodSaid(write.date(period.from), write.date(period.to))] satisfies Fact]
      : []),
  ]
}

function entries(d: Desk, { rows }: StatementContents): Section {
  const { sheet, words, write } = d
  const say = words.papers.statement
  if (rows.length === 0) return section(...ruledEntry(sheet, '', [piece(say.empty)]))
  const cells = rows.map(row => ({
    repair: row.repairNumber ?? '',
    billed: row.amount > 0 ? write.amount(row.amount) : '',
    paid: row.amount < 0 ? write.amount(minor(-row.amount)) : '',
    balance: write.amount(row.balance),
  }))
  const column = (head: string, key: keyof (typeof cells)[number], align: Partial<Column>): Column => ({
    head,
    width: widest(
      sheet,
      head,
      cells.map(cell => cell[key]),
    ),
    ...align,
  })
  const columns: Column[] = [
    { head: say.entry },
    column(say.repair, 'repair', {}),
    column(say.billed, 'billed', { align: 'right' }),
    column(say.paid, 'paid', { align: 'right' }),
    column(say.balance, 'balance', { align: 'right' }),
  ]
  return table(
    sheet,
    say.on,
    columns,
    rows.map((row, i) => {
      const { repair, billed, paid, balance } = cells[i] ?? { repair: '', billed: '', paid: '', balance: '' }
      return {
        margin: write.date(row.on),
        cells: [entryText(d, row), repair, billed, paid, balance].map(text => [piece(text)]),
      }
    }),
  )
}

function entryText({ words }: Desk, { entry, number = '', method }: StatementRow): string {
  const text = words.papers.statement.entries[entry](number)
  return [text, method && said(words.paymentMethods, method)].filter(Boolean).join(', ')
}

function figures(
  { words, write }: Desk,
  { before, billed, paid, writtenOff, balance }: StatementContents,
): Total[] {
  const say = words.papers.statement
  const last =
    balance < 0
      ? { label: say.held, amount: write.money(minor(-balance)) }
      : { label: say.owed, amount: write.money(balance) }
  const where = (label: string, amount: Minor) =>
    amount === 0 ? [] : [{ label, amount: write.amount(amount) }]
  return [
    ...where(say.before, before),
    { label: say.totalBilled, amount: write.amount(billed) },
    { label: say.totalPaid, amount: write.amount(paid) },
    ...where(say.totalWrittenOff, writtenOff),
    { ...last, final: true },
  ]
}
