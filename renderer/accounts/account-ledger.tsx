import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { type FormEvent, useState } from 'react'
import { Link, useSearchParams } from 'wouter'
import { type AccountName, accountNames } from '../../core/accounts/names.ts'
import type { Period } from '../../core/calendar/period.ts'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { Choice, TextField } from '../parts/field.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { PeriodLine, usePeriod } from './period.tsx'

type View = InferResponseType<typeof api.pages.account.$get>
type Row = View['rows'][number]

const isAccount = (name: string | null): name is AccountName => accountNames.some(one => one === name)

/** Which account, and what is looked for in it, as they stand in the address. */
function useAccount() {
  const [asked, setAsked] = useSearchParams()
  const name = asked.get('name')
  const change = (to: Record<string, string>) =>
    setAsked(before => ({ ...Object.fromEntries(before), ...to }))
  return { name: isAccount(name) ? name : 'owed', search: asked.get('search') ?? '', change }
}

/** One account of the shop's books, entry by entry, with the balance after each. */
export function AccountLedger() {
  const { words } = useShop()
  const period = usePeriod()
  const { name, search, change } = useAccount()
  const asked = { name, search, ...period }
  const query = useQuery({
    queryKey: ['account', asked],
    placeholderData: keepPreviousData,
    queryFn: () => answer(api.pages.account.$get({ query: asked })),
  })
  return (
    <Asked query={query} title={words.accounts.ledger.title}>
      {view => <Shown view={view} period={period} change={change} />}
    </Asked>
  )
}

/** What an entry is about, with a way there. */
function About({ row }: { row: Row }) {
  const { words } = useShop()
  const { ledger, papers } = words.accounts
  const paper = row.paperId !== null && (
    <Link href={`/accounts/paper/${row.paperId}`}>{ledger.entries[row.entry](row.paperNumber ?? '')}</Link>
  )
  const repair = row.repairNumber !== null && (
    <Link href={`/counter/${row.repairNumber}`}>{papers.ofRepair(row.repairNumber)}</Link>
  )
  return (
    <Entry
      lead={
        row.ownerId === null ? (
          ledger.entries[row.entry]('')
        ) : (
          <Link href={`/accounts/owner/${row.ownerId}`}>{row.owner}</Link>
        )
      }
      rest={
        <>
          {paper || (row.ownerId !== null && ledger.entries[row.entry](''))} {repair}
        </>
      }
      second={row.remark}
    />
  )
}

function useColumns(view: View): Column<Row>[] {
  const { ledger } = useShop().words.accounts
  return [
    { label: ledger.date, kind: 'date', cell: row => <CivilDate on={row.on} /> },
    { label: ledger.number, kind: 'number', cell: row => row.paperNumber ?? '' },
    { label: ledger.entry, kind: 'entry', cell: row => <About row={row} /> },
    { label: ledger.amount, kind: 'figure', cell: row => <Money minor={row.amountMinor} /> },
    {
      label: ledger.balance,
      kind: 'figure',
      cell: row => <Money minor={row.balanceMinor} />,
      total: <Money minor={view.afterMinor} />,
    },
  ]
}

interface ShownProps {
  readonly view: View
  readonly period: Period
  readonly change: (to: Record<string, string>) => void
}

function Shown({ view, period, change }: ShownProps) {
  const { words, formats } = useShop()
  const { ledger, period: said } = words.accounts
  const columns = useColumns(view)
  const before = formats.money(view.beforeMinor)
  return (
    <AccountsPage
      title={ledger.title}
      subtitle={said.said(formats.date(view.from), formats.date(view.to))}
      sums={[{ figure: <Money minor={view.afterMinor} sign />, words: ledger.at(formats.date(view.to)) }]}
    >
      <div className="narrowing in-line">
        <Choice
          name="name"
          label={ledger.account}
          choices={ledger.accounts}
          value={view.account}
          onChange={name => change({ name })}
        />
        <Search key={view.search} search={view.search} onSearch={search => change({ search })} />
      </div>
      <PeriodLine period={period} />
      <p className="above-ledger quiet">{ledger.before(before)}</p>
      <Ledger
        caption={ledger.accounts[view.account]}
        columns={columns}
        groups={[{ title: '', rows: view.rows }]}
        rowKey={row => row.line}
        empty={ledger.empty}
        totalLabel={ledger.after}
      />
      {view.more && <p className="above-ledger quiet">{ledger.more}</p>}
    </AccountsPage>
  )
}

function Search({ search, onSearch }: { search: string; onSearch: (search: string) => void }) {
  const { ledger } = useShop().words.accounts
  const [typed, setTyped] = useState(search)
  const send = (event: FormEvent) => {
    event.preventDefault()
    onSearch(typed.trim())
  }
  return (
    <form className="from-to" onSubmit={send}>
      <TextField name="search" label={ledger.search} value={typed} onChange={setTyped} />
      <button type="submit" className="second">
        {ledger.find}
      </button>
    </form>
  )
}
