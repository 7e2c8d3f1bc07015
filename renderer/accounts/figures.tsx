import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import type { Period } from '../../core/calendar/period.ts'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { Download } from '../parts/download.tsx'
import { Money } from '../parts/figures.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import {
  ComebackTables,
  EarnedTable,
  type Figures,
  HoursTables,
  StockTable,
  TurnRoundTable,
} from './figure-tables.tsx'
import { PeriodLine, usePeriod } from './period.tsx'

/** What the records of a period add up to: hours, turn-round, comebacks, earnings, stock. */
export function FiguresPage() {
  const { words } = useShop()
  const period = usePeriod('year')
  const query = useQuery({
    queryKey: ['figures', period],
    placeholderData: keepPreviousData,
    queryFn: () => answer(api.pages.figures.$get({ query: { ...period } })),
  })
  return (
    <Asked query={query} title={words.figures.title}>
      {view => <Shown view={view} period={period} />}
    </Asked>
  )
}

function Shown({ view, period }: { view: Figures; period: Period }) {
  const { words, formats } = useShop()
  const { figures, accounts } = words
  const part = (name: keyof typeof tables) => (
    <Part key={name} title={figures[name].title} from={figures[name].from} file={files[name]} period={period}>
      {tables[name](view)}
    </Part>
  )
  return (
    <AccountsPage
      title={figures.title}
      subtitle={accounts.period.said(formats.date(view.from), formats.date(view.to))}
      sums={[
        { figure: view.handedOver, words: figures.handedOver(view.handedOver) },
        { figure: <Money minor={view.stockMinor} sign />, words: figures.stock.value },
      ]}
    >
      <PeriodLine period={period} />
      <div className="beside-margin">
        <p className="buttons">
          <button type="button" className="second" onClick={() => window.print()}>
            {figures.print}
          </button>
        </p>
        {(Object.keys(tables) as (keyof typeof tables)[]).map(part)}
      </div>
    </AccountsPage>
  )
}

const tables = {
  hours: (view: Figures) => <HoursTables view={view} />,
  turnRound: (view: Figures) => <TurnRoundTable view={view} />,
  comebacks: (view: Figures) => <ComebackTables view={view} />,
  earned: (view: Figures) => <EarnedTable view={view} />,
  stock: (view: Figures) => <StockTable view={view} />,
}

/** The table of each to keep. */
const files: Readonly<Record<keyof typeof tables, string>> = {
  hours: 'figures/hours',
  turnRound: 'figures/turn-round',
  comebacks: 'figures/comebacks',
  earned: 'figures/earned',
  stock: 'figures/stock',
}

interface PartProps {
  readonly title: string
  readonly from: string
  readonly file: string
  readonly period: Period
  readonly children: ReactNode
}

/** One figure: its name, what it is counted from, its tables, and the way to take it out. */
function Part({ title, from, file, period, children }: PartProps) {
  const { figures } = useShop().words
  return (
    <section className="figure-part" aria-label={title}>
      <h2>{title}</h2>
      <p className="quiet">{from}</p>
      {children}
      <p className="take">
        <Download path={`/exports/${file}.csv?${new URLSearchParams({ ...period })}`}>
          {title}, {figures.take}
        </Download>
      </p>
    </section>
  )
}
