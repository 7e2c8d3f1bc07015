import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { useState } from 'react'
import { Link } from 'wouter'
import { saysAll } from '../../core/custody/custody.ts'
import { answer, api } from '../api.ts'
import { belongingWords, clockWords } from '../clock-words.ts'
import { Asked } from '../parts/asked.tsx'
import { TextField } from '../parts/field.tsx'
import { CivilDate, MarginDay } from '../parts/figures.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { Page } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

type View = InferResponseType<typeof api.pages.custody.$get>
type Thing = View['groups'][number]['things'][number]

/** Where every clock and every part of one is right now, searched as it is typed. */
export function WhereEverythingIs() {
  const { where } = useShop().words.shelf
  const query = useQuery({ queryKey: ['custody'], queryFn: () => answer(api.pages.custody.$get()) })
  return (
    <Asked query={query} title={where.title}>
      {view => <Shown view={view} />}
    </Asked>
  )
}

function Shown({ view }: { view: View }) {
  const { where } = useShop().words.shelf
  const [typed, setTyped] = useState('')
  const columns = useColumns()
  const say = useSaid()
  const groups = view.groups.map(group => ({
    title: where.groups[group.where],
    rows: group.things.filter(thing => saysAll(Object.values(say(thing)).join(' '), typed)),
  }))
  const found = groups.reduce((sum, { rows }) => sum + rows.length, 0)
  return (
    <Page
      title={where.title}
      date={<MarginDay on={view.today} />}
      sums={[{ figure: found, words: where.things }]}
    >
      <search className="where-search">
        <TextField name="typed" label={where.search} hint={where.hint} value={typed} onChange={setTyped} />
        <Link className="button second" href="/shelf">
          {where.toShelf}
        </Link>
      </search>
      <Ledger
        caption={where.title}
        columns={columns}
        groups={groups}
        rowKey={thing => thing.key}
        empty={where.none}
        open={({ number }) => `/counter/${number}`}
      />
    </Page>
  )
}

/** What a line says of a thing: its place, its number, what it is, and whose. */
function useSaid() {
  const { words } = useShop()
  const { where } = words.shelf
  return (thing: Thing) => {
    const { number } = thing
    if (thing.kind === 'clock')
      return {
        at: thing.place ?? words.screens.stages[thing.stage],
        number,
        what: clockWords(words, thing.clock),
        more: thing.owner,
      }
    if (thing.kind === 'belonging')
      return { at: thing.tag || where.noTag, number, what: belongingWords(words, thing), more: thing.owner }
    return { at: thing.vendor, number, what: thing.description, more: '' }
  }
}

function useColumns(): Column<Thing>[] {
  const { words } = useShop()
  const { where } = words.shelf
  const say = useSaid()
  return [
    { label: where.at, kind: 'date', cell: thing => say(thing).at },
    { label: words.shelf.number, kind: 'number', cell: ({ number }) => number },
    {
      label: where.what,
      kind: 'entry',
      cell: thing => (
        <Entry
          lead={say(thing).what}
          second={thing.kind === 'outside' ? <Due thing={thing} /> : say(thing).more}
        />
      ),
    },
  ]
}

function Due({ thing }: { thing: Extract<Thing, { kind: 'outside' }> }) {
  const { bench } = useShop().words
  if (thing.dueOn === null) return null
  return (
    <>
      {bench.away.due} <CivilDate on={thing.dueOn} style="short" />
      {thing.overdue && <span className="late"> · {bench.away.overdue}</span>}
    </>
  )
}
