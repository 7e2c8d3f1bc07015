import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'wouter'
import { partKinds } from '../../core/vocabulary/work.ts'
import { Asked } from '../parts/asked.tsx'
import { MarginDay, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { EntryLine, Page } from '../parts/page.tsx'
import { partWords, sizeWords } from '../parts/part-words.ts'
import { useShop } from '../shop.tsx'
import { Orders } from './orders.tsx'
import { type PartRow, type Stores, storesQuery } from './stores.ts'

/** Every part by kind with sizes, stock, cost and price, and what is on order. */
export function PartsList() {
  const { stores } = useShop().words
  const query = useQuery(storesQuery)
  return (
    <Asked query={query} title={stores.title}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

function Shown({ view }: { view: Stores }) {
  const { words } = useShop()
  const { stores } = words
  const [id, setId] = useState<number | null>(null)
  const groups = [
    { title: stores.toOrder, rows: view.parts.filter(part => part.toOrder) },
    ...partKinds.map(kind => ({
      title: words.partKinds[kind],
      rows: view.parts.filter(part => part.kind === kind && !part.toOrder),
    })),
  ]
  const shown = groups.flatMap(group => group.rows)
  const chosen = shown.find(part => part.id === id) ?? shown[0]
  return (
    <Page
      title={stores.title}
      date={<MarginDay on={view.today} />}
      sums={[
        { figure: view.counts.toOrder, words: stores.sums.toOrder },
        { figure: view.counts.onOrder, words: stores.sums.onOrder },
        { figure: view.counts.overdue, words: stores.sums.overdue },
      ]}
      entry={<StoresLine chosen={chosen} />}
    >
      <Ledger
        caption={stores.list}
        columns={useColumns(view)}
        groups={groups}
        rowKey={part => part.id}
        empty={stores.empty}
        open={part => `/stores/${part.id}`}
        selected={chosen?.id ?? null}
        onSelect={part => setId(part.id)}
        totalLabel={stores.total}
      />
      <Orders orders={view.orders} />
    </Page>
  )
}

function useColumns(view: Stores): Column<PartRow>[] {
  const { words } = useShop()
  const { stores } = words
  return [
    { label: stores.keptAt, kind: 'date', cell: part => part.keptAt },
    { label: stores.inStock, kind: 'number', cell: part => part.inStock },
    {
      label: stores.part,
      kind: 'entry',
      cell: part => (
        <Entry
          lead={part.name}
          rest={sizeWords(words, part.sizes)}
          second={[part.vendor, !part.active && stores.notKept].filter(Boolean).join(' · ')}
        />
      ),
    },
    { label: stores.onOrder, kind: 'figure', cell: part => part.onOrder || words.screens.none },
    { label: stores.reorderAt, kind: 'figure', cell: part => part.reorderAt || words.screens.none },
    { label: stores.cost, kind: 'figure', cell: part => <Money minor={part.unitCostMinor} /> },
    { label: stores.price, kind: 'figure', cell: part => <Money minor={part.unitPriceMinor} /> },
    {
      label: stores.value,
      kind: 'figure',
      cell: part => <Money minor={part.valueMinor} />,
      total: <Money minor={view.valueMinor} />,
    },
  ]
}

function StoresLine({ chosen }: { chosen: PartRow | undefined }) {
  const { words } = useShop()
  const { line } = words.stores
  return (
    <EntryLine label={line.label}>
      <div className="line">
        <span className="label">{chosen ? chosen.inStock : ''}</span>
        <div className="control">{chosen ? partWords(words, chosen) : line.none}</div>
        <div className="buttons">
          {chosen && (
            <Link className="button" href={`/stores/${chosen.id}`}>
              {line.open}
            </Link>
          )}
          <Link className="button second" href="/stores/new">
            {line.add}
          </Link>
          <Link className="button second" href="/stores/springs">
            {line.springs}
          </Link>
        </div>
      </div>
    </EntryLine>
  )
}
