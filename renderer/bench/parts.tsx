import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField, TextField, Tick } from '../parts/field.tsx'
import { Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { partWords } from '../parts/part-words.ts'
import { neededNumber } from '../parts/typed.ts'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import { type Card, storesQuery } from './bench.ts'

type Use = Card['parts']['rows'][number]

/** Parts taken from stock for this repair at the price frozen then, and those on order for it. */
export function PartsSection({ view }: { view: Repair }) {
  const { words } = useShop()
  const { parts: said } = words.bench
  return (
    <Section title={said.heading}>
      <Used parts={view.bench.parts} />
      <Opened label={said.add}>{close => <UseForm view={view} close={close} />}</Opened>
      <Ordered orders={view.bench.orders} />
    </Section>
  )
}

function Used({ parts }: { parts: Card['parts'] }) {
  const { words } = useShop()
  const { parts: said } = words.bench
  const columns: Column<Use>[] = [
    {
      label: said.part,
      kind: 'entry',
      cell: row => <Entry lead={row.part.name} rest={words.partKinds[row.part.kind]} />,
    },
    { label: said.quantity, kind: 'figure', cell: row => row.quantity },
    {
      label: said.price,
      kind: 'figure',
      cell: row => <Money minor={row.priceMinor} />,
      total: <Money minor={parts.priceMinor} />,
    },
    {
      label: words.bench.labour.change,
      kind: 'text',
      cell: row =>
        row.quantity > 0 && (
          <Opened label={said.putBack} look="plain" name={said.putBackOf(row.part.name)}>
            {close => <PutBack row={row} close={close} />}
          </Opened>
        ),
    },
  ]
  return (
    <Ledger
      caption={said.heading}
      columns={columns}
      groups={[{ title: '', rows: parts.rows }]}
      rowKey={row => row.id}
      empty={said.none}
      totalLabel={said.total}
      plain
    />
  )
}

function UseForm({ view, close }: { view: Repair; close: () => void }) {
  const { words } = useShop()
  const { parts: said } = words.bench
  const { data } = useQuery(storesQuery)
  const inStock = data?.parts.filter(part => part.active && part.inStock > 0) ?? []
  const entry = useEntry({ partId: '', quantity: '', atShopsCost: false })
  const act = useAct(
    (input: { repairId: number; partId: number; quantity: number; atShopsCost: boolean }) =>
      answer(api.bench.usePart.$post({ json: input })),
    {
      said: (result, input) =>
        said.said(inStock.find(part => part.id === input.partId)?.name ?? '', result.inStock),
      after: close,
    },
  )
  if (data && inStock.length === 0) return <p className="quiet">{said.noStock}</p>
  const choices = Object.fromEntries(
    inStock.map(part => [String(part.id), `${partWords(words, part)} · ${said.inStock(part.inStock)}`]),
  )
  const input = () => ({
    repairId: view.repair.id,
    partId: neededNumber(entry.value.partId),
    quantity: neededNumber(entry.value.quantity),
    atShopsCost: entry.value.atShopsCost,
  })
  return (
    <OpenForm act={act} input={input} label={said.add} send={said.send} close={close}>
      <Choice label={said.part} choices={choices} empty={words.screens.form.choose} {...entry.at('partId')} />
      <DecimalField label={said.quantity} {...entry.at('quantity')} />
      <Tick label={said.atShopsCost} hint={said.atShopsCostHint} {...entry.at('atShopsCost')} />
    </OpenForm>
  )
}

function PutBack({ row, close }: { row: Use; close: () => void }) {
  const { words } = useShop()
  const { parts: said } = words.bench
  const entry = useEntry({ quantity: String(row.quantity), reason: '' })
  const act = useAct(
    (input: { moveId: number; quantity: number; reason: string }) =>
      answer(api.bench.putBack.$post({ json: input })),
    { said: () => said.putBackSaid(row.part.name), after: close },
  )
  const input = () => ({
    moveId: row.id,
    quantity: neededNumber(entry.value.quantity),
    reason: entry.value.reason,
  })
  return (
    <OpenForm act={act} input={input} label={said.putBackOf(row.part.name)} send={said.putBack} close={close}>
      <DecimalField label={said.quantity} {...entry.at('quantity')} />
      <TextField label={said.reason} {...entry.at('reason')} />
    </OpenForm>
  )
}

function Ordered({ orders }: { orders: Card['orders'] }) {
  const { words, formats } = useShop()
  const { parts: said } = words.bench
  if (orders.length === 0) return null
  return (
    <>
      <h3 className="group-label">{said.ordered}</h3>
      <ul className="lines">
        {orders.map(order => (
          <li key={order.id}>
            {order.arrivedAt
              ? said.arrived(order.quantity, order.part)
              : said.orderedLine(
                  order.quantity,
                  order.part,
                  order.dueOn ? formats.date(order.dueOn) : words.screens.noDate,
                )}
          </li>
        ))}
      </ul>
    </>
  )
}
