import { useQuery } from '@tanstack/react-query'
import { useId } from 'react'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { type Work, works } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../parts/field.tsx'
import { Money } from '../parts/figures.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { orNull } from '../parts/typed.ts'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import { type Card, storesQuery } from './bench.ts'

type Away = Card['outsideWork'][number]

/** Work given out of the house for this repair, and taken back. */
export function OutsideSection({ view }: { view: Repair }) {
  const { words } = useShop()
  const { outside } = words.bench
  const rows = view.bench.outsideWork
  return (
    <Section title={outside.heading}>
      {rows.length === 0 && <p className="quiet">{outside.none}</p>}
      <ul className="lines">
        {rows.map(row => (
          <li key={row.id}>
            <WorkWords row={row} />{' '}
            {!row.backAt && (
              <Opened label={outside.takeBack} name={outside.takeBackOf(row.description)}>
                {close => <TakeBack row={row} close={close} />}
              </Opened>
            )}
          </li>
        ))}
      </ul>
      <Opened label={outside.add}>{close => <SendForm view={view} close={close} />}</Opened>
    </Section>
  )
}

function WorkWords({ row }: { row: Away }) {
  const { words, formats, settings } = useShop()
  const { outside, away } = words.bench
  const day = (at: string) => formats.shortDate(civilDateOf(at, settings.place.timeZone))
  const due =
    row.dueOn &&
    (row.overdue ? away.overdueSince(formats.shortDate(row.dueOn)) : formats.shortDate(row.dueOn))
  return (
    <>
      <b>{row.vendor}</b>: {row.description} · {outside.sent(day(row.sentAt))}
      {row.backAt && ` · ${outside.back(day(row.backAt))}`}
      {!row.backAt && due && (
        <>
          {' '}
          · <span className={row.overdue ? 'late' : undefined}>{due}</span>
        </>
      )}
      {row.priceMinor !== null && (
        <>
          {' '}
          · <Money minor={row.priceMinor} sign />
        </>
      )}
    </>
  )
}

function SendForm({ view, close }: { view: Repair; close: () => void }) {
  const { bench, lineWorks } = useShop().words
  const { outside } = bench
  const { data } = useQuery(storesQuery)
  const list = useId()
  const entry = useEntry({
    vendor: '',
    work: '' as Work | '',
    description: '',
    dueOn: '',
    cost: '',
    price: '',
  })
  const { vendor, work, description, dueOn, cost, price } = entry.value
  const input = () => ({
    repairId: view.repair.id,
    vendor,
    work: work || null,
    description,
    dueOn: orNull(dueOn),
    cost: orNull(cost),
    price: orNull(price),
  })
  const act = useAct((given: ReturnType<typeof input>) => answer(api.bench.sendOut.$post({ json: given })), {
    said: (_, given) => outside.said(given.vendor),
    after: close,
  })
  return (
    <OpenForm act={act} input={input} label={outside.add} send={outside.send} close={close}>
      <div className="fields">
        <TextField label={outside.vendor} hint={outside.vendorHint} list={list} {...entry.at('vendor')} />
        <datalist id={list}>
          {data?.vendors.map(one => (
            <option key={one.id} value={one.name} />
          ))}
        </datalist>
        <Choice
          label={outside.work}
          choices={Object.fromEntries(works.map(one => [one, lineWorks[one]]))}
          empty={outside.otherWork}
          {...entry.at('work')}
        />
        <TextField label={outside.description} {...entry.at('description')} />
        <DateField label={outside.dueOn} {...entry.at('dueOn')} />
        <DecimalField label={outside.cost} {...entry.at('cost')} />
        <DecimalField label={outside.price} {...entry.at('price')} />
      </div>
    </OpenForm>
  )
}

function TakeBack({ row, close }: { row: Away; close: () => void }) {
  const { outside } = useShop().words.bench
  const entry = useEntry({ cost: '', price: '' })
  const act = useAct(
    (input: { outsideWorkId: number; cost: string | null; price: string | null }) =>
      answer(api.bench.takeBack.$post({ json: input })),
    { said: () => outside.backSaid, after: close },
  )
  const input = () => ({
    outsideWorkId: row.id,
    cost: orNull(entry.value.cost),
    price: orNull(entry.value.price),
  })
  return (
    <OpenForm
      act={act}
      input={input}
      label={outside.takeBackOf(row.description)}
      send={outside.takeBack}
      close={close}
    >
      <div className="fields">
        <DecimalField label={outside.cost} {...entry.at('cost')} />
        <DecimalField label={outside.price} {...entry.at('price')} />
      </div>
    </OpenForm>
  )
}
