import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { type FormEvent, useState } from 'react'
import { Link, useLocation, useSearchParams } from 'wouter'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { answer, api } from '../api.ts'
import { Asked } from '../parts/asked.tsx'
import { Download } from '../parts/download.tsx'
import { CivilDate, Figure } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { EntryLine, Page } from '../parts/page.tsx'
import { TurnPages } from '../parts/turn-pages.tsx'
import { useShop } from '../shop.tsx'

type View = InferResponseType<typeof api.pages.owners.$get>
type Row = View['rows'][number]

const ownersQuery = (asked: Record<string, string>) => ({
  queryKey: ['owners', asked],
  placeholderData: keepPreviousData,
  queryFn: () => answer(api.pages.owners.$get({ query: asked })),
})

/** The address of the page after or before an owner's line. */
const turnPlace = (side: 'after' | 'before', line: Pick<Row, 'name' | 'id'> | undefined) =>
  line
    ? `/register?${new URLSearchParams({ [`${side}Name`]: line.name, [`${side}Id`]: String(line.id) })}`
    : null

function useColumns(): Column<Row>[] {
  const { words, settings } = useShop()
  const { register } = words
  return [
    {
      label: register.last,
      kind: 'date',
      cell: ({ lastAt }) => <CivilDate on={lastAt && civilDateOf(lastAt, settings.place.timeZone)} />,
    },
    { label: register.owner.number, kind: 'number', cell: ({ id }) => id },
    {
      label: register.name,
      kind: 'entry',
      cell: ({ name, address }) => <Entry lead={name} second={address.replaceAll('\n', ', ')} />,
    },
    { label: register.clocks, kind: 'figure', cell: ({ clocks }) => <Figure value={clocks} /> },
    { label: register.repairs, kind: 'figure', cell: ({ repairs }) => <Figure value={repairs} /> },
  ]
}

/** Owners by name, a page at a time; the line at the foot turns to a name or enters a new owner. */
export function OwnersList() {
  const { words } = useShop()
  const [asked] = useSearchParams()
  const query = useQuery(ownersQuery(Object.fromEntries(asked)))
  const columns = useColumns()
  return (
    <Asked query={query} title={words.screens.pages.register}>
      {({ rows, previous, next }) => (
        <Page title={words.screens.pages.register} subtitle={words.register.owners} entry={<NameLine />}>
          <Ledger
            caption={words.register.owners}
            columns={columns}
            groups={[{ title: '', rows }]}
            rowKey={row => row.id}
            open={row => `/register/owner/${row.id}`}
            empty={words.register.empty}
          />
          <ListFiles />
          <TurnPages
            page={rows[0]?.id}
            previous={previous ? turnPlace('before', rows.at(0)) : null}
            next={next ? turnPlace('after', rows.at(-1)) : null}
          />
        </Page>
      )}
    </Asked>
  )
}

/** Lists in and out: a file of another program entered, the register taken along. */
function ListFiles() {
  const { listImport } = useShop().words
  return (
    <p className="list-files">
      <Link href="/register/import">{listImport.link}</Link>
      {(['owners.csv', 'clocks.csv', 'owners.vcf'] as const).map(file => (
        <Download key={file} path={`/exports/${file}`}>
          {listImport.takeOut[file]}
        </Download>
      ))}
    </p>
  )
}

/** The line at the foot: a name to turn to, or the beginning of a new owner. */
function NameLine() {
  const { line } = useShop().words.register
  const [, navigate] = useLocation()
  const [text, setText] = useState('')
  const name = text.trim()
  const go = (event: FormEvent) => {
    event.preventDefault()
    navigate((name && turnPlace('after', { name, id: 0 })) || '/register')
  }
  return (
    <EntryLine label={line.label}>
      <form onSubmit={go}>
        <label htmlFor="register-line">{line.name}</label>
        <div className="control">
          <input
            id="register-line"
            autoComplete="off"
            value={text}
            onChange={event => setText(event.target.value)}
          />
        </div>
        <div className="buttons">
          <button type="submit">{line.goTo}</button>
          <button
            type="button"
            className="second"
            onClick={() => navigate(`/register/new-owner?name=${encodeURIComponent(name)}`)}
          >
            {line.enter}
          </button>
        </div>
      </form>
    </EntryLine>
  )
}
