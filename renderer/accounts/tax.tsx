import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import type { Period } from '../../core/calendar/period.ts'
import { answer, api } from '../api.ts'
import { TaxDownload } from '../exports/page-section.tsx'
import { Asked } from '../parts/asked.tsx'
import { Money } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'
import { PeriodLine, usePeriod } from './period.tsx'

type View = InferResponseType<typeof api.pages.tax.$get>
type Row = View['rows'][number]

/** Tax of a period by its name and rate, from the invoices and credit notes issued in it. */
export function Tax() {
  const { words } = useShop()
  const period = usePeriod()
  const query = useQuery({
    queryKey: ['tax', period],
    placeholderData: keepPreviousData,
    queryFn: () => answer(api.pages.tax.$get({ query: { ...period } })),
  })
  return (
    <Asked query={query} title={words.accounts.tax.title}>
      {view => <Shown view={view} period={period} />}
    </Asked>
  )
}

function useColumns(view: View): Column<Row>[] {
  const { words, formats } = useShop()
  const { tax } = words.accounts
  return [
    { label: tax.code, kind: 'entry', cell: row => row.code },
    { label: tax.rate, kind: 'figure', cell: row => formats.percent(row.rate) },
    {
      label: tax.taxable,
      kind: 'figure',
      cell: row => <Money minor={row.taxableMinor} />,
      total: <Money minor={view.taxableMinor} />,
    },
    {
      label: tax.tax,
      kind: 'figure',
      cell: row => <Money minor={row.taxMinor} />,
      total: <Money minor={view.taxMinor} />,
    },
  ]
}

function Shown({ view, period }: { view: View; period: Period }) {
  const { words, formats } = useShop()
  const { tax, period: said } = words.accounts
  const columns = useColumns(view)
  return (
    <AccountsPage
      title={tax.title}
      subtitle={said.said(formats.date(view.from), formats.date(view.to))}
      sums={[{ figure: <Money minor={view.taxMinor} sign />, words: tax.sum }]}
    >
      <PeriodLine period={period} />
      <div className="beside-margin">
        <p className="quiet">{tax.notes[view.due]}</p>
        <Ledger
          plain
          caption={tax.title}
          columns={columns}
          groups={[{ title: '', rows: view.rows }]}
          rowKey={row => `${row.code} ${row.rate}`}
          empty={tax.empty}
          totalLabel={tax.total}
        />
        {view.byKind.length > 0 && <ByKind view={view} />}
        <div className="buttons">
          <button type="button" className="second" onClick={() => window.print()}>
            {tax.print}
          </button>
          <TaxDownload period={period} />
        </div>
        <p className="quiet">{tax.advice}</p>
      </div>
    </AccountsPage>
  )
}

/** The same figures told apart by kind of line, and what bears no tax. */
function ByKind({ view: { byKind, untaxed } }: { view: View }) {
  const { words, formats } = useShop()
  const { tax } = words.accounts
  const kinds: Readonly<Record<string, string>> = words.papers.lines.kinds
  const rows = [
    ...byKind.map(row => ({ ...row, name: `${row.code} ${formats.percent(row.rate)}` })),
    ...untaxed.map(({ kind, netMinor }) => ({
      kind,
      name: tax.untaxed,
      taxableMinor: netMinor,
      taxMinor: null,
    })),
  ]
  return (
    <section aria-label={tax.byKind}>
      <h2>{tax.byKind}</h2>
      <Ledger
        plain
        caption={tax.byKind}
        groups={[{ title: '', rows }]}
        rowKey={row => `${row.name} ${row.kind}`}
        empty={tax.empty}
        columns={[
          { label: tax.kind, kind: 'entry', cell: row => kinds[row.kind] ?? tax.wholePaper },
          { label: tax.code, kind: 'text', cell: row => row.name },
          { label: tax.taxable, kind: 'figure', cell: row => <Money minor={row.taxableMinor} /> },
          { label: tax.tax, kind: 'figure', cell: row => <Money minor={row.taxMinor} /> },
        ]}
      />
    </section>
  )
}
