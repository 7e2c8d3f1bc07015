import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { useAct } from '../parts/act.tsx'
import { benchQuery } from '../parts/bench-query.ts'
import { useEntry } from '../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../parts/field.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { neededNumber, orNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { PartView } from './stores.ts'

interface FormProps {
  readonly partId: number
  readonly close: () => void
}

/** Receiving, counting and ordering a part. */
export function StockActs({ view }: { view: PartView }) {
  const { page } = useShop().words.stores
  const { id } = view.part
  return (
    <Section title={page.acts}>
      <div className="openers">
        <Opened label={page.receive}>{close => <Receive partId={id} close={close} />}</Opened>
        <Opened label={page.count}>{close => <Count partId={id} close={close} />}</Opened>
        <Opened label={page.order}>{close => <Order partId={id} close={close} />}</Opened>
      </div>
    </Section>
  )
}

function Receive({ partId, close }: FormProps) {
  const { page, orders } = useShop().words.stores
  const entry = useEntry({ quantity: '', unitCost: '', note: '' })
  const input = () => ({
    partId,
    quantity: neededNumber(entry.value.quantity),
    unitCost: orNull(entry.value.unitCost),
    note: entry.value.note,
  })
  const act = useAct((given: ReturnType<typeof input>) => answer(api.stores.receive.$post({ json: given })), {
    said: ({ inStock }) => page.received(inStock),
    after: close,
  })
  return (
    <OpenForm act={act} input={input} label={page.receive} send={page.receive} close={close}>
      <DecimalField label={page.receiveCount} {...entry.at('quantity')} />
      <DecimalField label={orders.unitCost} {...entry.at('unitCost')} />
      <TextField label={page.note} {...entry.at('note')} />
    </OpenForm>
  )
}

function Count({ partId, close }: FormProps) {
  const { page } = useShop().words.stores
  const entry = useEntry({ counted: '', note: '' })
  const input = () => ({ partId, counted: neededNumber(entry.value.counted), note: entry.value.note })
  const act = useAct((given: ReturnType<typeof input>) => answer(api.stores.count.$post({ json: given })), {
    said: ({ inStock }) => page.countedSaid(inStock),
    after: close,
  })
  return (
    <OpenForm act={act} input={input} label={page.count} send={page.count} close={close}>
      <DecimalField label={page.counted} {...entry.at('counted')} />
      <TextField label={page.countNote} {...entry.at('note')} />
    </OpenForm>
  )
}

/** Repairs at the bench a part may be ordered for. */
function useRepairChoices(): Record<string, string> {
  const { words } = useShop()
  const { data } = useQuery(benchQuery)
  return Object.fromEntries(
    (data?.queue ?? []).map(row => [String(row.id), `${row.number} · ${clockWords(words, row.clock)}`]),
  )
}

function Order({ partId, close }: FormProps) {
  const { page, form } = useShop().words.stores
  const repairs = useRepairChoices()
  const entry = useEntry({ quantity: '', vendor: '', dueOn: '', repairId: '' })
  const input = () => ({
    partId,
    quantity: neededNumber(entry.value.quantity),
    vendor: entry.value.vendor,
    dueOn: orNull(entry.value.dueOn),
    repairId: entry.value.repairId === '' ? null : Number(entry.value.repairId),
  })
  const act = useAct((given: ReturnType<typeof input>) => answer(api.stores.order.$post({ json: given })), {
    said: () => page.orderedSaid,
    after: close,
  })
  return (
    <OpenForm act={act} input={input} label={page.order} send={page.order} close={close}>
      <DecimalField label={page.orderCount} {...entry.at('quantity')} />
      <TextField label={form.vendor} {...entry.at('vendor')} />
      <DateField label={page.dueOn} {...entry.at('dueOn')} />
      <Choice label={page.forRepair} choices={repairs} empty={page.stockOnly} {...entry.at('repairId')} />
    </OpenForm>
  )
}
