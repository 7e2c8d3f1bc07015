import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { neededNumber, orNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { OrderRow } from './stores.ts'

/** Orders that have not arrived, the longest due first; each is taken in where it stands. */
export function Orders({ orders }: { orders: readonly OrderRow[] }) {
  const { orders: said } = useShop().words.stores
  if (orders.length === 0) return null
  const columns: Column<OrderRow>[] = [
    {
      label: said.due,
      kind: 'date',
      cell: row => <CivilDate on={row.dueOn} style="short" />,
    },
    { label: said.quantity, kind: 'number', cell: row => row.quantity },
    {
      label: said.what,
      kind: 'entry',
      cell: row => <Entry lead={row.part.name} rest={row.vendor} second={<OrderSecond row={row} />} />,
    },
    {
      label: said.act,
      kind: 'text',
      cell: row => (
        <Opened label={said.arrive} name={said.arriveOf(row.part.name)}>
          {close => <Arrive row={row} close={close} />}
        </Opened>
      ),
    },
  ]
  return (
    <div className="whole-ledger">
      <Ledger
        caption={said.heading}
        columns={columns}
        groups={[{ title: said.heading, rows: orders }]}
        rowKey={row => row.id}
        empty={said.empty}
        plain
      />
    </div>
  )
}

/** For whom it was ordered, and whether its day has passed. */
function OrderSecond({ row }: { row: OrderRow }) {
  const { orders: said } = useShop().words.stores
  return (
    <>
      {row.repairNumber !== null && `${said.for(row.repairNumber)} `}
      {row.overdue && <span className="late">{said.overdue}</span>}
    </>
  )
}

function Arrive({ row, close }: { row: OrderRow; close: () => void }) {
  const { orders: said } = useShop().words.stores
  const entry = useEntry({ quantity: String(row.quantity), unitCost: '' })
  const input = () => ({
    orderId: row.id,
    quantity: neededNumber(entry.value.quantity),
    unitCost: orNull(entry.value.unitCost),
  })
  const act = useAct((given: ReturnType<typeof input>) => answer(api.stores.arrive.$post({ json: given })), {
    said: ({ inStock }) => said.said(inStock),
    after: close,
  })
  return (
    <OpenForm act={act} input={input} label={said.arriveOf(row.part.name)} send={said.send} close={close}>
      <DecimalField label={said.came} {...entry.at('quantity')} />
      <DecimalField label={said.unitCost} {...entry.at('unitCost')} />
    </OpenForm>
  )
}
