import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import { answer, api } from '../api.ts'
import { type ClockInShort, clockWords } from '../clock-words.ts'
import { Asked } from '../parts/asked.tsx'
import { MarginDay } from '../parts/figures.tsx'
import { Page, Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

type Today = InferResponseType<typeof api.pages.today.$get>

/** The turn of the day: everything that asks for something today, on one sheet to be printed. */
export function TurnOfTheDay() {
  const { bench } = useShop().words
  const query = useQuery({ queryKey: ['today'], queryFn: () => answer(api.pages.today.$get()) })
  return (
    <Asked query={query} title={bench.today.title}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

/** True when nothing asks for anything today. */
const isQuiet = (view: Today): boolean =>
  Object.values(view).every(rows => typeof rows === 'string' || rows.length === 0)

function Shown({ view }: { view: Today }) {
  const { words, formats } = useShop()
  const { today } = words.bench
  return (
    <Page title={today.title} subtitle={formats.longDate(view.today)} date={<MarginDay on={view.today} />}>
      <div className="day-acts">
        <button type="button" onClick={() => window.print()}>
          {today.print}
        </button>
        <a className="button second" href="/exports/dates.ics" download>
          {today.calendar}
        </a>
      </div>
      {isQuiet(view) && <p className="aside-words">{today.none}</p>}
      <RoundToday view={view} />
      <RepairsToday view={view} />
      <GoodsToday view={view} />
    </Page>
  )
}

interface ListProps<Row> {
  readonly title: string
  readonly rows: readonly Row[]
  readonly rowKey: (row: Row) => string | number
  readonly line: (row: Row) => ReactNode
}

/** One list of the day with a box to tick on paper; left out where there is nothing in it. */
function DayList<Row>({ title, rows, rowKey, line }: ListProps<Row>) {
  if (rows.length === 0) return null
  return (
    <Section title={title}>
      <ul className="day-list">
        {rows.map(row => (
          <li key={rowKey(row)}>{line(row)}</li>
        ))}
      </ul>
    </Section>
  )
}

/** A repair's number as a link, its clock, and what else is to be said. */
function RepairLine(props: { page: string; number: number; clock: ClockInShort; rest: string }) {
  const { words } = useShop()
  const { page, number, clock, rest } = props
  return (
    <>
      <Link href={`/${page}/${number}`}>{number}</Link> {clockWords(words, clock)} · {rest}
    </>
  )
}

function RoundToday({ view }: { view: Today }) {
  const { words } = useShop()
  const { today } = words.bench
  return (
    <>
      <DayList
        title={today.round}
        rows={view.round}
        rowKey={row => row.runId}
        line={row => (
          <RepairLine
            page="shelf"
            {...row}
            rest={[row.place?.name, row.due.wind && today.wind, row.due.reading && today.read]
              .filter(Boolean)
              .join(' · ')}
          />
        )}
      />
      <DayList
        title={today.toDecide}
        rows={view.toDecide}
        rowKey={row => row.runId}
        line={row => (
          <RepairLine
            page="shelf"
            {...row}
            rest={`${words.verdictsInShort[row.verdict]} · ${row.owner.name}`}
          />
        )}
      />
    </>
  )
}

function RepairsToday({ view }: { view: Today }) {
  const { words, formats } = useShop()
  const { today, running } = words.bench
  return (
    <>
      <DayList
        title={today.toCollect}
        rows={view.toCollect}
        rowKey={row => row.number}
        line={row => (
          <RepairLine
            page="counter"
            {...row}
            rest={[row.owner.name, !row.toldAt && today.notTold, row.uncollected && words.counter.uncollected]
              .filter(Boolean)
              .join(' · ')}
          />
        )}
      />
      <DayList
        title={today.late}
        rows={view.late}
        rowKey={row => row.number}
        line={row => (
          <RepairLine
            page="bench"
            {...row}
            rest={`${row.owner} · ${row.estimatedOn ? formats.shortDate(row.estimatedOn) : ''}`}
          />
        )}
      />
      <DayList
        title={today.partsIn}
        rows={view.partsIn}
        rowKey={row => row.number}
        line={row => <RepairLine page="bench" {...row} rest={row.owner.name} />}
      />
      <DayList
        title={today.toEstimate}
        rows={view.toEstimate}
        rowKey={row => row.number}
        line={row => <RepairLine page="counter" {...row} rest={row.owner} />}
      />
      <DayList
        title={today.toSend}
        rows={view.toSend}
        rowKey={row => row.number}
        line={row => <RepairLine page="counter" {...row} rest={row.owner.name} />}
      />
      <DayList
        title={today.toAsk}
        rows={view.toAsk}
        rowKey={row => row.number}
        line={row => (
          <RepairLine
            page="counter"
            {...row}
            rest={`${row.owner.name} · ${today.askedOn(formats.shortDate(row.sinceOn))}`}
          />
        )}
      />
      <DayList
        title={today.forgotten}
        rows={view.forgotten}
        rowKey={row => row.id}
        line={row => (
          <>
            <Link href={`/bench/${row.number}`}>{row.number}</Link> {words.tasks[row.task]} ·{' '}
            {row.person ?? running.nobody} · {formats.instant(row.startedAt)}
          </>
        )}
      />
    </>
  )
}

function GoodsToday({ view }: { view: Today }) {
  const { words, formats } = useShop()
  const { today } = words.bench
  const due = (on: string | null) => (on ? today.dueOn(formats.shortDate(on)) : '')
  return (
    <>
      <DayList
        title={today.outsideLate}
        rows={view.outsideLate}
        rowKey={row => row.id}
        line={row => (
          <>
            <Link href={`/bench/${row.number}`}>{row.number}</Link> {row.vendor} · {row.description} ·{' '}
            {due(row.dueOn)}
          </>
        )}
      />
      <DayList
        title={today.ordersLate}
        rows={view.ordersLate}
        rowKey={row => row.id}
        line={row => (
          <>
            {row.quantity} × <Link href={`/stores/${row.partId}`}>{row.part.name}</Link>
            {row.vendor && ` · ${row.vendor}`} · {due(row.dueOn)}
          </>
        )}
      />
      <DayList
        title={today.toOrder}
        rows={view.toOrder}
        rowKey={row => row.id}
        line={row => (
          <>
            <Link href={`/stores/${row.id}`}>{row.name}</Link>
            {row.vendor && ` · ${row.vendor}`} · {today.left(row.inStock)}
          </>
        )}
      />
    </>
  )
}
