import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { useState } from 'react'
import { counterGroups } from '../../core/standing/counter-list.ts'
import type { Words } from '../../core/words/en/index.ts'
import type { Formats } from '../../core/words/format.ts'
import { answer, api } from '../api.ts'
import { belongingWords, clockMarks, clockWords } from '../clock-words.ts'
import { CivilDate, DueDate, MarginDay, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Page } from '../parts/page.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { CounterLine } from './counter-line.tsx'

type View = InferResponseType<typeof api.pages.counter.$get>
export type CounterRow = View['rows'][number]

const estimateWords = ({ estimate }: CounterRow, { counter }: Words, formats: Formats): string =>
  !estimate
    ? ''
    : estimate.sentAt && estimate.validUntil
      ? counter.estimateOut(estimate.version, formats.shortDate(estimate.validUntil))
      : counter.estimateUnsent(estimate.version)

/** The second line of a repair: what the counter hand needs to know before speaking to its owner. */
export function secondLine(row: CounterRow, words: Words, formats: Formats): string {
  const { counter } = words
  const parts: Record<CounterRow['group'], readonly string[]> = {
    comeback: [row.covered ? counter.covered : counter.notCovered, row.fault],
    'to-collect': [
      row.uncollected ? counter.uncollected : '',
      row.toldAt ? counter.told(formats.instant(row.toldAt)) : counter.untold,
      ...row.belongings.map(belonging => belongingWords(words, belonging)),
    ],
    'awaiting-word': [estimateWords(row, words, formats), row.fault],
    late: [row.fault, estimateWords(row, words, formats)],
    'to-estimate': [row.fault],
    'in-hand': [row.fault],
  }
  return parts[row.group].filter(Boolean).join(' · ')
}

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
      cell: row => <Standing stage={row.stage} waitingFor={row.waitingFor} />,
    },
    {
      label: counter.estimated,
      kind: 'figure',
      cell: row => <DueDate on={row.estimatedOn} late={row.late} />,
    },
    {
      label: counter.toPay,
      kind: 'figure',
      cell: row => <Money minor={row.toPayMinor} />,
      total: <Money minor={view.toCollectMinor} />,
    },
  ]
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
