import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import type { Period } from '../../core/calendar/period.ts'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { Money as Amount, CivilDate } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { PeriodLine, usePeriod } from './period.tsx'

type View = InferResponseType<typeof api.pages.payments.$get>
type Row = View['rows'][number]

/** Money that came in and went out in a period, payment by payment. */
export function Money() {
  const { words } = useShop()
  const period = usePeriod()
  const query = useQuery({
    queryKey: ['payments', period],
    placeholderData: keepPreviousData,
    queryFn: () => answer(api.pages.payments.$get({ query: { ...period } })),
  })
  return (
    <Asked query={query} title={words.accounts.money.title}>
      {view => <Shown view={view} period={period} />}
    </Asked>
  )
}

function useColumns(view: View): Column<Row>[] {
  const { words } = useShop()
  const { money } = words.accounts
  const by = (row: Row) =>
    [
      words.paymentMethods[row.method],
      row.reference,
      row.repairNumber !== null && words.accounts.papers.ofRepair(row.repairNumber),
    ]
      .filter(Boolean)
      .join(' · ')
  return [
    { label: money.date, kind: 'date', cell: row => <CivilDate on={row.onDate} /> },
    { label: money.receipt, kind: 'number', cell: row => row.receiptNumber },
    {
      label: money.owner,
      kind: 'entry',
      cell: row => (
        <Entry lead={row.owner.name} rest={row.amountMinor < 0 && money.givenBack} second={by(row)} />
      ),
    },
    {
      label: money.amount,
      kind: 'figure',
      cell: row => <Amount minor={row.amountMinor} />,
      total: <Amount minor={view.totalMinor} />,
    },
  ]
}

function Shown({ view, period }: { view: View; period: Period }) {
  const { words, formats } = useShop()
  const { money, period: said } = words.accounts
  const columns = useColumns(view)
  return (
    <AccountsPage
      title={money.title}
      subtitle={said.said(formats.date(view.from), formats.date(view.to))}
      sums={view.byMethod.map(({ method, amountMinor }) => ({
        figure: <Amount minor={amountMinor} sign />,
        words: words.paymentMethods[method],
      }))}
    >
      <PeriodLine period={period} />
      <Ledger
        caption={money.title}
        columns={columns}
        groups={[{ title: '', rows: view.rows }]}
        rowKey={row => row.id}
        open={row =>
          row.receiptId === null ? `/counter/${row.repairNumber}` : `/accounts/paper/${row.receiptId}`
        }
        empty={money.empty}
        totalLabel={money.total}
      />
    </AccountsPage>
  )
}
