import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { Link, useSearchParams } from 'wouter'
import { isCivilDate } from '../../core/calendar/civil.ts'
import type { Words } from '../../core/words/en/index.ts'
import { answer, api } from '../api.ts'
import { ExportsSection } from '../exports/page-section.tsx'
import { Asked } from '../parts/asked.tsx'
import { Download } from '../parts/download.tsx'
import { Money } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { EntryLine } from '../parts/page.tsx'
import { workingPlace } from '../parts/paper-link.tsx'
import { TurnPages } from '../parts/turn-pages.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { Narrow, type Narrowed, narrowedBy } from './day-book-narrow.tsx'
import { TypedEntry } from './typed-entry.tsx'

type View = InferResponseType<typeof api.pages.dayBook.$get>
type Row = View['rows'][number]

const dayBookQuery = (asked: Record<string, string>) => ({
  queryKey: ['dayBook', asked],
  placeholderData: keepPreviousData,
  queryFn: () => answer(api.pages.dayBook.$get({ query: asked })),
})

const place = '/accounts/day-book'

/** The page before or after a line, narrowed to the same. */
const turnPlace = (asked: Narrowed, side: 'before' | 'after', line: Row | undefined) =>
  line ? `${place}?${new URLSearchParams({ ...asked, [side]: String(line.id) })}` : null

/** The day's lines together, under the day. */
const byDay = (rows: readonly Row[], title: (day: string) => string) =>
  [...Map.groupBy(rows, row => row.local.slice(0, 10))].map(([day, lines]) => ({
    title: title(day),
    rows: lines,
  }))

/** What an act was about, with a way there. */
function About({ row }: { row: Row }) {
  const { words, formats } = useShop()
  const { dayBook } = words.accounts
  const {
    paperId,
    paperKind,
    paperNumber,
    handedKind,
    repairNumber,
    ownerId,
    ownerName,
    clockId,
    form,
    thing,
  } = row
  const places: (readonly [string, string] | false)[] = [
    paperId !== null &&
      paperKind !== null && [
        `/accounts/paper/${paperId}`,
        words.papers.titleNumber(words.papers.titles[paperKind], paperNumber ?? ''),
      ],
    handedKind !== null && [workingPlace(handedKind, row.subjectId), words.papers.titles[handedKind]],
    repairNumber !== null && [`/counter/${repairNumber}`, dayBook.repair(repairNumber)],
    clockId !== null && [`/register/clock/${clockId}`, form ? words.forms[form] : dayBook.clock],
    ownerId !== null && [`/register/owner/${ownerId}`, ownerName ?? ''],
  ]
  return (
    <>
      {places
        .filter(place => place !== false)
        .map(([href, said]) => (
          <span key={href}>
            {' · '}
            <Link href={href}>{said}</Link>
          </span>
        ))}
      {thing && <> · {isCivilDate(thing) ? formats.date(thing) : thing}</>}
    </>
  )
}

/** The sentence of an act; an act of a newer program is told by its name. */
function actWords({ accounts }: Words, act: string): string {
  const acts: Readonly<Record<string, string>> = accounts.acts
  return acts[act] ?? act
}

/** In the place of an entry whose text was taken out: when, by whom and why. */
function TakenOut({ row: { redaction } }: { row: Row }) {
  const { formats, words } = useShop()
  const { dayBook } = words.accounts
  if (!redaction) return null
  const { at, by, reason } = redaction
  return (
    <p className="quiet">{dayBook.takenOut({ on: formats.instant(at), by: by ?? dayBook.nobody, reason })}</p>
  )
}

function useColumns(): Column<Row>[] {
  const { words } = useShop()
  const { dayBook } = words.accounts
  return [
    { label: dayBook.time, kind: 'date', cell: row => <time dateTime={row.at}>{row.local.slice(11)}</time> },
    { label: dayBook.number, kind: 'number', cell: row => row.id },
    {
      label: dayBook.act,
      kind: 'entry',
      cell: row => (
        <>
          <b>{actWords(words, row.act)}</b>
          <About row={row} />
          <span className="quiet"> · {dayBook.by(row.person ?? dayBook.nobody)}</span>
          {row.input === null ? <TakenOut row={row} /> : <TypedEntry number={row.id} input={row.input} />}
        </>
      ),
    },
    {
      label: dayBook.amount,
      kind: 'figure',
      cell: row => (row.amountMinor === null ? '' : <Money minor={row.amountMinor} />),
    },
  ]
}

/** Every act of the shop in words, the newest first: when, by whom, about what, and the entry as it was typed. */
export function DayBook() {
  const { words, formats } = useShop()
  const { dayBook } = words.accounts
  const [asked] = useSearchParams()
  const query = useQuery(dayBookQuery(Object.fromEntries(asked)))
  const narrowed = narrowedBy(asked)
  const columns = useColumns()
  return (
    <Asked query={query} title={dayBook.title}>
      {({ rows, previous, next }) => (
        <AccountsPage title={dayBook.title} entry={<SaveLine />}>
          <Narrow key={JSON.stringify(narrowed)} asked={narrowed} place={place} />
          <Ledger
            caption={dayBook.title}
            columns={columns}
            groups={byDay(rows, formats.longDate)}
            rowKey={row => row.id}
            empty={dayBook.empty}
          />
          <TurnPages
            page={rows[0]?.id}
            previous={previous ? turnPlace(narrowed, 'after', rows.at(0)) : null}
            next={next ? turnPlace(narrowed, 'before', rows.at(-1)) : null}
          />
          <ExportsSection />
        </AccountsPage>
      )}
    </Asked>
  )
}

function SaveLine() {
  const { dayBook } = useShop().words.accounts
  return (
    <EntryLine label={dayBook.save}>
      <div className="line">
        <span />
        <p className="control quiet">{dayBook.saveHint}</p>
        <div className="buttons">
          <Download className="button second" path="/api/pages/dayFile" name="day-book.json">
            {dayBook.save}
          </Download>
        </div>
      </div>
    </EntryLine>
  )
}
