import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { Asked } from '../parts/asked.tsx'
import { useEntry } from '../parts/entry.ts'
import { DecimalField, TextField } from '../parts/field.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { TurnPages } from '../parts/turn-pages.tsx'
import { useShop } from '../shop.tsx'
import { AccountsPage } from './accounts-page.tsx'

type View = InferResponseType<typeof api.pages.drawer.$get>
type Row = View['rows'][number]

const placeOf = (side: 'before' | 'after', line: Row | undefined) =>
  line ? `/accounts/drawer?${side}=${line.id}` : null

function useColumns(): Column<Row>[] {
  const { drawer, dayBook } = useShop().words.accounts
  return [
    { label: drawer.date, kind: 'date', cell: row => <CivilDate on={row.onDate} /> },
    { label: dayBook.number, kind: 'number', cell: row => row.id },
    {
      label: drawer.remark,
      kind: 'entry',
      cell: row => (
        <Entry lead={row.remark || drawer.agrees} rest={dayBook.by(row.person ?? dayBook.nobody)} />
      ),
    },
    { label: drawer.expected, kind: 'figure', cell: row => <Money minor={row.expectedMinor} /> },
    { label: drawer.counted, kind: 'figure', cell: row => <Money minor={row.countedMinor} /> },
    { label: drawer.difference, kind: 'figure', cell: row => <Money minor={row.differenceMinor} /> },
    { label: drawer.taken, kind: 'figure', cell: row => <Money minor={row.takenMinor} /> },
  ]
}

/** The cash drawer: what should lie in it, the count at the end of the day, and every count before. */
export function Drawer() {
  const { drawer } = useShop().words.accounts
  const [search] = useSearchParams()
  const asked = Object.fromEntries(search)
  const query = useQuery({
    queryKey: ['drawer', asked],
    queryFn: () => answer(api.pages.drawer.$get({ query: asked })),
  })
  const columns = useColumns()
  return (
    <Asked query={query} title={drawer.title}>
      {({ rows, previous, next, expectedMinor }) => (
        <AccountsPage
          title={drawer.title}
          sums={[{ figure: <Money minor={expectedMinor} sign />, words: drawer.expectedNow }]}
        >
          <Section title={drawer.count}>
            <Opened label={drawer.count}>{close => <CountForm close={close} />}</Opened>
          </Section>
          <Ledger
            caption={drawer.counts}
            columns={columns}
            groups={[{ title: '', rows }]}
            rowKey={row => row.id}
            empty={drawer.empty}
          />
          <TurnPages
            page={rows[0]?.id}
            previous={previous ? placeOf('after', rows.at(0)) : null}
            next={next ? placeOf('before', rows.at(-1)) : null}
          />
        </AccountsPage>
      )}
    </Asked>
  )
}

function CountForm({ close }: { close: () => void }) {
  const { words, formats, settings } = useShop()
  const { drawer } = words.accounts
  const { currency } = settings.place
  const entry = useEntry({ counted: '', taken: '', remark: '' })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.countDrawer.$post>[0]['json']) =>
      answer(ledger.accounts.countDrawer.$post({ json })),
    {
      said: ({ differenceMinor }) => drawer.said(formats.money(differenceMinor)),
      confirm: (_, { expectedMinor, differenceMinor }) => ({
        title: drawer.ask,
        body: <p>{drawer.asked(formats.money(expectedMinor), formats.money(differenceMinor))}</p>,
        yesWords: drawer.send,
      }),
      after: close,
    },
  )
  const input = () => ({ ...entry.value, taken: entry.value.taken.trim() || '0' })
  return (
    <OpenForm
      reserved="accounts.countDrawer"
      act={act}
      input={input}
      label={drawer.count}
      send={drawer.send}
      close={close}
    >
      <div className="fields form">
        <DecimalField label={drawer.counted} unit={currency} {...entry.at('counted')} />
        <DecimalField label={drawer.taken} hint={drawer.takenHint} unit={currency} {...entry.at('taken')} />
        <TextField label={drawer.remark} hint={drawer.remarkHint} {...entry.at('remark')} />
      </div>
    </OpenForm>
  )
}
