import { answer, api } from '../api.ts'
import { ActButton, ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { DateField, TextField } from '../parts/field.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { useShop } from '../shop.tsx'
import { type ClosedDay, useClosedDays, useCloseOn } from './closed-day.ts'
import { PublicHolidays } from './public-holidays.tsx'

/** Days beyond the week on which the shop is shut: the list, one more, and the public holidays of a place. */
export function ClosedDays() {
  const { words } = useShop()
  const { closed } = words.shop
  const days = useClosedDays()
  return (
    <>
      <p className="shop-intro">{closed.intro}</p>
      <Ledger
        plain
        caption={closed.list}
        groups={[{ title: '', rows: days }]}
        rowKey={day => day.onDate}
        empty={closed.empty}
        columns={[
          { label: closed.date, kind: 'text', cell: day => <CivilDate on={day.onDate} style="long" /> },
          { label: closed.name, kind: 'entry', cell: day => day.name },
          { label: words.shop.change, kind: 'figure', cell: day => <OpenAfterAll day={day} /> },
        ]}
      />
      <h2>{closed.addTitle}</h2>
      <OneDay />
      <h2>{closed.fillTitle}</h2>
      <PublicHolidays days={days} />
    </>
  )
}

function OpenAfterAll({ day: { onDate } }: { day: ClosedDay }) {
  const { words, formats } = useShop()
  const { closed } = words.shop
  const date = formats.longDate(onDate)
  const act = useAct((json: { onDate: string }) => answer(api.shop.openOn.$post({ json })), {
    said: () => closed.opened(date),
  })
  return (
    <ActButton act={act} input={{ onDate }} look="plain">
      {closed.open}
      <span className="hidden-words"> {closed.openOf(date)}</span>
    </ActButton>
  )
}

function OneDay() {
  const { words, formats } = useShop()
  const { closed } = words.shop
  const entry = useEntry({ onDate: '', name: '' }, 'days[0]')
  const act = useCloseOn(([day]) => closed.added(formats.longDate(day?.onDate ?? '')), entry.reset)
  return (
    <ActForm act={act} input={() => [entry.value]} label={closed.addTitle}>
      <div className="fields one-line">
        <DateField label={closed.date} {...entry.at('onDate')} />
        <TextField label={closed.name} {...entry.at('name')} />
        <Send act={act} look="second">
          {closed.add}
        </Send>
      </div>
    </ActForm>
  )
}
