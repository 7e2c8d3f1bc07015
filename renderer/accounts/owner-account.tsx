import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { Link } from 'wouter'
import type { Period } from '../../core/calendar/period.ts'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Opened } from '../parts/opened.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { WorkingPaperLink } from '../parts/paper-link.tsx'
import { Taken } from '../repair/taken.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { PayBack } from './pay-back.tsx'
import { PeriodLine, usePeriod } from './period.tsx'

type View = InferResponseType<(typeof api.pages.ownerAccounts)[':id']['$get']>
type Row = View['rows'][number] & { readonly line: number }

/** An owner's account: what is open and held, every entry of a period with the balance after it, and its statement. */
export function OwnerAccount({ id }: { id: string }) {
  const { words } = useShop()
  const period = usePeriod()
  const query = useQuery({
    queryKey: ['ownerAccount', id, period],
    placeholderData: keepPreviousData,
    queryFn: () => answer(api.pages.ownerAccounts[':id'].$get({ param: { id }, query: { ...period } })),
  })
  return (
    <Asked query={query} title={words.accounts.ownerAccount.title}>
      {view => <Shown view={view} period={period} />}
    </Asked>
  )
}

function useColumns(view: View): Column<Row>[] {
  const { words } = useShop()
  const { ledger, papers } = words.accounts
  const { entries } = words.papers.statement
  const second = ({ method, repairNumber }: Row) =>
    [method && words.paymentMethods[method], repairNumber && papers.ofRepair(Number(repairNumber))]
      .filter(Boolean)
      .join(' · ')
  return [
    { label: ledger.date, kind: 'date', cell: row => <CivilDate on={row.on} /> },
    { label: ledger.number, kind: 'number', cell: row => row.number ?? '' },
    {
      label: ledger.entry,
      kind: 'entry',
      cell: row => <Entry lead={entries[row.entry](row.number ?? '')} second={second(row)} />,
    },
    { label: ledger.amount, kind: 'figure', cell: row => <Money minor={row.amount} /> },
    {
      label: ledger.balance,
      kind: 'figure',
      cell: row => <Money minor={row.balance} />,
      total: <Money minor={view.balance} />,
    },
  ]
}

function Shown({ view, period }: { view: View; period: Period }) {
  const { words, formats } = useShop()
  const { ownerAccount, ledger, period: said } = words.accounts
  const { owner, heldMinor, open, rows } = view
  const columns = useColumns(view)
  const days = said.said(formats.date(view.from), formats.date(view.to))
  return (
    <AccountsPage
      title={ownerAccount.of(owner.name)}
      subtitle={days}
      sums={[{ figure: <Money minor={view.balance} sign />, words: ownerAccount.balance }]}
    >
      <Taken />
      <Section title={ownerAccount.open}>
        <Facts
          facts={[
            [
              ownerAccount.owner,
              <Link key="owner" href={`/register/owner/${owner.id}`}>
                {owner.name}
              </Link>,
            ],
            ...open.map(
              ({ number, dueMinor }) =>
                [
                  words.accounts.papers.ofRepair(number),
                  <Link key={number} href={`/counter/${number}`}>
                    <Money minor={dueMinor} sign />
                  </Link>,
                ] as const,
            ),
            [ownerAccount.held, heldMinor !== 0 && <Money minor={heldMinor} sign />],
            [
              ownerAccount.statement,
              <WorkingPaperLink key="paper" kind="statement" id={owner.id} about={days} period={period} />,
            ],
          ]}
        />
        {heldMinor > 0 && (
          <Opened label={ownerAccount.payBack}>
            {close => <PayBack ownerId={owner.id} heldMinor={heldMinor} close={close} />}
          </Opened>
        )}
      </Section>
      <PeriodLine period={period} />
      <p className="above-ledger quiet">{ledger.before(formats.money(view.before))}</p>
      <Ledger
        caption={ownerAccount.of(owner.name)}
        columns={columns}
        groups={[{ title: '', rows: rows.map((row, line) => ({ ...row, line })) }]}
        rowKey={row => row.line}
        empty={ledger.empty}
        totalLabel={ledger.after}
      />
    </AccountsPage>
  )
}
