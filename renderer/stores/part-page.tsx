import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { minor, minorText } from '../../core/money/minor.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { Asked } from '../parts/asked.tsx'
import { useEntry } from '../parts/entry.ts'
import { Tick } from '../parts/field.tsx'
import { Money } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Facts, Page, Section } from '../parts/page.tsx'
import { sizeWords } from '../parts/part-words.ts'
import { useSeenAs } from '../parts/seen.ts'
import { useShop } from '../shop.tsx'
import { Orders } from './orders.tsx'
import { PartFields, partTyped, usePartEntry } from './part-form.tsx'
import { StockActs } from './stock-acts.tsx'
import { type PartView, partQuery, type Stores, storesQuery } from './stores.ts'

/** One part: its facts, its stock and orders, every move. */
export function PartPage({ id }: { id: string }) {
  const { stores } = useShop().words
  const part = useQuery(partQuery(id))
  const { data } = useQuery(storesQuery)
  return (
    <Asked query={part} title={stores.title}>
      {view => data && <Shown view={view} stores={data} />}
    </Asked>
  )
}

interface ShownProps {
  readonly view: PartView
  readonly stores: Stores
}

function Shown({ view, stores }: ShownProps) {
  const { words } = useShop()
  const { stores: said } = words
  const { part } = view
  const vendor = stores.vendors.find(one => one.id === part.vendorId)?.name ?? ''
  return (
    <Page
      title={part.name}
      subtitle={words.partKinds[part.kind]}
      date={part.keptAt}
      sums={[{ figure: part.inStock, words: said.page.sum }]}
    >
      <Section title={said.page.facts}>
        <Facts
          facts={[
            [said.page.sizes, sizeWords(words, part.sizes)],
            [said.page.vendor, vendor],
            [said.cost, <Money key="cost" minor={part.unitCostMinor} sign />],
            [said.price, <Money key="price" minor={part.unitPriceMinor} sign />],
            [said.reorderAt, part.reorderAt > 0 && String(part.reorderAt)],
          ]}
        />
        <Opened label={said.form.change}>
          {close => <ChangePart view={view} vendor={vendor} close={close} />}
        </Opened>
        <p>
          <Link href="/stores">{said.page.toList}</Link>
        </p>
      </Section>
      <StockActs view={view} />
      <Orders orders={stores.orders.filter(order => order.partId === part.id)} />
      <Moves view={view} />
    </Page>
  )
}

function ChangePart({ view, vendor, close }: { view: PartView; vendor: string; close: () => void }) {
  const { words, settings } = useShop()
  const { form } = words.stores
  const major = (amount: number) => minorText(minor(amount), settings.place.currency)
  const { entry, lines, input } = usePartEntry(partTyped(view, vendor, major), view.part.sizes)
  const kept = useEntry({ active: view.part.active })
  const whole = () => ({ ...input(), ...kept.value, partId: view.part.id })
  const act = useAct(
    (given: Parameters<typeof api.stores.changePart.$post>[0]['json']) =>
      answer(api.stores.changePart.$post({ json: given })),
    {
      said: (_, { name }) => form.changed(name),
      after: close,
    },
  )
  const seen = useSeenAs(view.stamp, act.problems)
  return (
    <OpenForm
      act={act}
      input={() => ({ ...whole(), seen })}
      label={form.change}
      send={form.send}
      close={close}
    >
      <PartFields entry={entry} lines={lines} />
      <Tick label={form.active} {...kept.at('active')} />
    </OpenForm>
  )
}

type Move = PartView['moves'][number]

function Moves({ view }: { view: PartView }) {
  const { words, formats } = useShop()
  const { page } = words.stores
  const columns: Column<Move>[] = [
    { label: page.when, kind: 'text', cell: move => formats.instant(move.at) },
    {
      label: page.what,
      kind: 'entry',
      cell: move => (
        <>
          {move.repairNumber === null
            ? page.kinds[move.kind]
            : page.onRepair(page.kinds[move.kind], move.repairNumber)}
          {move.note && <small>{move.note}</small>}
        </>
      ),
    },
    { label: page.by, kind: 'text', cell: move => move.person ?? words.bench.running.nobody },
    { label: page.moved, kind: 'figure', cell: move => formats.number(move.quantity) },
    { label: page.after, kind: 'figure', cell: move => formats.number(move.after) },
  ]
  return (
    <Section title={page.history}>
      <Ledger
        caption={page.history}
        columns={columns}
        groups={[{ title: '', rows: view.moves }]}
        rowKey={move => move.id}
        empty={page.noMoves}
        plain
      />
    </Section>
  )
}
