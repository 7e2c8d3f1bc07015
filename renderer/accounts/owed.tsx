import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { Link } from 'wouter'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'

type View = InferResponseType<typeof api.pages.owed.$get>
type Row = View['rows'][number]

function useColumns(view: View): Column<Row>[] {
  const { owed } = useShop().words.accounts
  return [
    { label: owed.since, kind: 'date', cell: row => <CivilDate on={row.sinceOn} /> },
    { label: owed.number, kind: 'number', cell: row => row.number },
    {
      label: owed.owner,
      kind: 'entry',
      cell: row => <Entry lead={row.owner.name} second={owed.days(row.days)} />,
    },
    { label: owed.billed, kind: 'figure', cell: row => <Money minor={row.billedMinor} /> },
    { label: owed.paid, kind: 'figure', cell: row => <Money minor={row.paidMinor} /> },
    { label: owed.writtenOff, kind: 'figure', cell: row => <Money minor={row.writtenOffMinor} /> },
    {
      label: owed.due,
      kind: 'figure',
      cell: row => <Money minor={row.dueMinor} />,
      total: <Money minor={view.dueMinor} />,
    },
  ]
}

/** What is owed to the shop and since when, and what it holds for owners. */
export function Owed() {
  const { words } = useShop()
  const query = useQuery({ queryKey: ['owed'], queryFn: () => answer(api.pages.owed.$get()) })
  return (
    <Asked query={query} title={words.accounts.owed.title}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

function Shown({ view }: { view: View }) {
  const { owed } = useShop().words.accounts
  const columns = useColumns(view)
  return (
    <AccountsPage
      title={owed.title}
      sums={[
        { figure: <Money minor={view.owedMinor} sign />, words: owed.owedSum },
        { figure: <Money minor={view.heldMinor} sign />, words: owed.heldSum },
      ]}
    >
      <Ledger
        caption={owed.title}
        columns={columns}
        groups={[
          { title: owed.groups.owed, rows: view.rows.filter(({ dueMinor }) => dueMinor > 0) },
          { title: owed.groups.held, rows: view.rows.filter(({ dueMinor }) => dueMinor < 0) },
        ]}
        rowKey={row => row.repairId}
        open={row => `/counter/${row.number}`}
        empty={owed.empty}
        totalLabel={owed.total}
      />
      {view.accounts.length > 0 && (
        <Section title={owed.accounts}>
          <Facts
            facts={view.accounts.map(({ owner, heldMinor }) => [
              owner.name,
              <Link key={owner.id} href={`/accounts/owner/${owner.id}`}>
                <Money minor={heldMinor} sign />
              </Link>,
            ])}
          />
        </Section>
      )}
    </AccountsPage>
  )
}
