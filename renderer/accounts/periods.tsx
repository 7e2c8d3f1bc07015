import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { addDays } from '../../core/calendar/civil.ts'
import { answer, api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { Asked } from '../parts/asked.tsx'
import { useEntry } from '../parts/entry.ts'
import { DateField } from '../parts/field.tsx'
import { CivilDate, Instant } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'

type View = InferResponseType<typeof api.pages.periods.$get>
type Row = View['rows'][number]

/** To which day the books are closed, and closing them further. */
export function Periods() {
  const { words, formats } = useShop()
  const { periods } = words.accounts
  const query = useQuery({ queryKey: ['periods'], queryFn: () => answer(api.pages.periods.$get()) })
  const columns = useColumns()
  return (
    <Asked query={query} title={periods.title}>
      {({ closedTo, rows }) => (
        <AccountsPage
          title={periods.title}
          subtitle={closedTo ? periods.closedTo(formats.date(closedTo)) : periods.open}
        >
          <Section title={periods.close}>
            <p className="quiet">{periods.advice}</p>
            <Opened label={periods.close}>{close => <CloseForm close={close} />}</Opened>
          </Section>
          <Ledger
            caption={periods.title}
            columns={columns}
            groups={[{ title: '', rows }]}
            rowKey={row => row.id}
            empty={periods.empty}
          />
        </AccountsPage>
      )}
    </Asked>
  )
}

function useColumns(): Column<Row>[] {
  const { periods, dayBook } = useShop().words.accounts
  return [
    { label: periods.to, kind: 'date', cell: row => <CivilDate on={row.toDate} /> },
    { label: dayBook.number, kind: 'number', cell: row => row.id },
    {
      label: periods.closedAt,
      kind: 'entry',
      cell: row => (
        <>
          <Instant at={row.at} /> {dayBook.by(row.person ?? dayBook.nobody)}
        </>
      ),
    },
  ]
}

function CloseForm({ close }: { close: () => void }) {
  const { words, formats, today } = useShop()
  const { periods } = words.accounts
  const entry = useEntry({ toDate: addDays(today, -1) })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.closePeriod.$post>[0]['json']) =>
      answer(ledger.accounts.closePeriod.$post({ json })),
    {
      said: ({ toDate }) => periods.said(formats.date(toDate)),
      confirm: ({ toDate }) => ({
        title: periods.ask(formats.date(toDate)),
        body: <p>{periods.asked}</p>,
        yesWords: periods.send,
      }),
      after: close,
    },
  )
  return (
    <OpenForm
      reserved="accounts.closePeriod"
      act={act}
      input={() => entry.value}
      label={periods.close}
      send={periods.send}
      close={close}
    >
      <DateField label={periods.to} {...entry.at('toDate')} />
    </OpenForm>
  )
}
