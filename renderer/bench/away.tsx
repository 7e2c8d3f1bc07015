import { CivilDate } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import type { Bench } from './bench.ts'

type AwayRow = Bench['away'][number]

/** Outside work that is away, the longest due first; a line leads to its repair, where it is taken back. */
export function Away({ away }: { away: Bench['away'] }) {
  const { words } = useShop()
  const { away: said, number } = words.bench
  if (away.length === 0) return null
  const columns: Column<AwayRow>[] = [
    {
      label: said.due,
      kind: 'date',
      cell: row => <CivilDate on={row.dueOn} style="short" />,
    },
    { label: number, kind: 'number', cell: row => row.number },
    {
      label: said.what,
      kind: 'entry',
      cell: row => (
        <Entry
          lead={row.vendor}
          rest={row.description}
          second={row.overdue && <span className="late">{said.overdue}</span>}
        />
      ),
    },
  ]
  return (
    <div className="whole-ledger">
      <Ledger
        caption={said.heading}
        columns={columns}
        groups={[{ title: said.heading, rows: away }]}
        rowKey={row => row.id}
        empty={said.empty}
        open={row => `/bench/${row.number}`}
        plain
      />
    </div>
  )
}
