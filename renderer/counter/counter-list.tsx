import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { counterGroups } from '../../core/standing/counter-list.ts'
import type { Words } from '../../core/words/en/index.ts'
import { answer, api } from '../api.ts'
import { clockMarks, clockWords } from '../clock-words.ts'
import { CivilDate, DueDate, MarginDay, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Page } from '../parts/page.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { Begun } from './begun.tsx'
import { Copies } from './copies.tsx'
import { CounterLine } from './counter-line.tsx'
import { type CounterRow, secondLine, type View } from './counter-row.ts'

function useColumns(view: View): Column<CounterRow>[] {
  const { words, formats } = useShop()
  const { counter } = words
  const clock = (row: CounterRow) =>
    [clockWords(words, row.clock), clockMarks(words, row.clock)].filter(Boolean).join(', ')
  return [
    { label: counter.since, kind: 'date', cell: row => <CivilDate on={row.sinceOn} style="short" /> },
    { label: counter.number, kind: 'number', cell: row => row.number },
    {
      label: counter.ownerAndClock,
      kind: 'entry',
      cell: row => <Entry lead={row.owner.name} rest={clock(row)} second={secondLine(row, words, formats)} />,
    },
    {
      label: counter.standing,
      kind: 'standing',
      cell: row => <Standing {...row} />,
    },
    {
      label: counter.estimated,
      kind: 'figure',
      cell: row => <DueDate on={row.estimatedOn} late={row.late} />,
    },
    {
      label: counter.toPay,
      kind: 'figure',
      cell: row => <Amount row={row} />,
      total: <Money minor={view.toCollectMinor} />,
    },
  ]
}

/** What is billed and open; what is only agreed or asked says so, and is no bill. */
function Amount({ row: { toPayMinor, amountIs } }: { row: CounterRow }) {
  const { amounts } = useShop().words.counter
  return amountIs === 'billed' ? (
    <Money minor={toPayMinor} />
  ) : (
    <span className="not-billed">
      <small>{amounts[amountIs]}</small> <Money minor={toPayMinor} />
    </span>
  )
}

const groupsOf = (rows: readonly CounterRow[], { counter }: Words) =>
  counterGroups.map(group => ({
    title: counter.groups[group],
    rows: rows.filter(row => row.group === group),
  }))

/** Everything in the shop, the most urgent to an owner first, and the line to take in, open and hand over. */
export function CounterList() {
  const { data } = useQuery({ queryKey: ['counter'], queryFn: () => answer(api.pages.counter.$get()) })
  return data && <Shown view={data} />
}

function Shown({ view }: { view: View }) {
  const { words } = useShop()
  const { counter, screens } = words
  const [chosen, setChosen] = useState<number | null>(null)
  const columns = useColumns(view)
  return (
    <Page
      title={screens.pages.counter}
      date={<MarginDay on={view.today} />}
      sums={[
        { figure: view.counts.toCollect, words: counter.sums.toCollect },
        { figure: view.counts.awaitingWord, words: counter.sums.awaitingWord },
        { figure: view.counts.late, words: counter.sums.late },
      ]}
      entry={<CounterLine chosen={view.rows.find(row => row.id === chosen)} />}
    >
      <Copies />
      <Begun />
      <Ledger
        caption={counter.list}
        columns={columns}
        groups={groupsOf(view.rows, words)}
        rowKey={row => row.id}
        open={row => `/counter/${row.number}`}
        selected={chosen}
        onSelect={row => setChosen(row.id)}
        empty={counter.empty}
        totalLabel={counter.toCollectTotal}
      />
    </Page>
  )
}
