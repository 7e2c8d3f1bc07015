import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { Choice } from '../parts/field.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { TurnPages } from '../parts/turn-pages.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { carriesMoney } from './paper.ts'

type Row = InferResponseType<typeof api.pages.documents.$get>['rows'][number]

const papersQuery = (asked: Record<string, string>) => ({
  queryKey: ['documents', asked],
  placeholderData: keepPreviousData,
  queryFn: () => answer(api.pages.documents.$get({ query: asked })),
})

/** The address of a page of the papers of one kind, or of all where `kind` is ''. */
function placeOf(kind: string, side?: 'before' | 'after', line?: Row): string {
  const asked = new URLSearchParams({
    ...(kind && { kind }),
    ...(side && line && { [side]: String(line.id) }),
  }).toString()
  return asked ? `/accounts?${asked}` : '/accounts'
}

function useColumns(): Column<Row>[] {
  const { words } = useShop()
  const { papers } = words.accounts
  return [
    { label: papers.issued, kind: 'date', cell: row => <CivilDate on={row.issuedOn} /> },
    { label: papers.number, kind: 'number', cell: row => row.number },
    {
      label: papers.paper,
      kind: 'entry',
      cell: row => (
        <Entry lead={row.owner.name} rest={row.repairNumber !== null && papers.ofRepair(row.repairNumber)} />
      ),
    },
    { label: papers.kind, kind: 'text', cell: row => words.papers.titles[row.kind] },
    {
      label: papers.total,
      kind: 'figure',
      cell: row => <Money minor={carriesMoney(row.kind) ? row.totalMinor : null} />,
    },
  ]
}

/** Every paper issued, the newest first, of one kind where asked. */
export function PapersList() {
  const { words } = useShop()
  const { papers } = words.accounts
  const [asked] = useSearchParams()
  const [, navigate] = useLocation()
  const query = useQuery(papersQuery(Object.fromEntries(asked)))
  const columns = useColumns()
  const kind = asked.get('kind') ?? ''
  return (
    <Asked query={query} title={words.screens.pages.accounts}>
      {({ rows, previous, next }) => (
        <AccountsPage title={words.screens.pages.accounts} subtitle={papers.title}>
          <div className="narrowing in-line">
            <Choice
              name="kind"
              label={papers.show}
              choices={papers.kinds}
              empty={papers.all}
              value={kind}
              onChange={next => navigate(placeOf(next))}
            />
          </div>
          <Ledger
            caption={papers.title}
            columns={columns}
            groups={[{ title: '', rows }]}
            rowKey={row => row.id}
            open={row => `/accounts/paper/${row.id}`}
            empty={papers.empty}
          />
          <TurnPages
            page={rows[0]?.id}
            previous={previous ? placeOf(kind, 'after', rows.at(0)) : null}
            next={next ? placeOf(kind, 'before', rows.at(-1)) : null}
          />
        </AccountsPage>
      )}
    </Asked>
  )
}
