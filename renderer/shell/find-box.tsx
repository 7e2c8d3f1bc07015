import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { answer, api } from '../api.ts'
import { Combobox } from '../parts/combobox.tsx'
import { Standing } from '../parts/standing.tsx'
import { useWords } from '../words.ts'
import { type Found, foundWords, inOrder, placeOf } from './found.ts'

const ask = (q: string, kind: Found['kind'] | undefined, signal: AbortSignal) =>
  answer(api.find.$get({ query: kind ? { q, kind } : { q } }, { init: { signal } }))

/** Asks while typing, of one kind where given; an answer that is no longer wanted is cancelled on its way. */
export function useFound(text: string, kind?: Found['kind']) {
  const q = text.trim()
  const query = useQuery<Awaited<ReturnType<typeof ask>>>({
    queryKey: ['find', q, kind],
    enabled: q !== '',
    // What fewer letters found stays in sight until the answer comes.
    placeholderData: (before, query) => (q.startsWith(String(query?.queryKey[1])) ? before : undefined),
    queryFn: ({ signal }) => ask(q, kind, signal),
  })
  return {
    results: q === '' ? [] : inOrder(query.data?.results ?? []),
    settled: query.isSuccess && !query.isPlaceholderData,
  }
}

/** Number, name, phone digits, serial, maker: everything is found from every page. */
export function FindBox() {
  const { find } = useWords().screens
  const [, navigate] = useLocation()
  const [text, setText] = useState('')
  const { results, settled } = useFound(text)
  const open = (found: Found) => {
    setText('')
    document.getElementById('find')?.blur()
    navigate(placeOf(found))
  }
  return (
    <search className="find">
      <label htmlFor="find">{find.label}</label>
      <Combobox
        control={{ id: 'find', name: 'find', 'aria-describedby': 'find-hint' }}
        label={find.results}
        text={text}
        onText={setText}
        items={results}
        settled={settled}
        itemKey={found => `${found.kind} ${found.id}`}
        show={found => <FoundLine found={found} />}
        onChoose={open}
        nothing={find.nothing}
        eager
      />
      <span className="hint" id="find-hint">
        {find.hint}
      </span>
    </search>
  )
}

/** One thing found. */
function FoundLine({ found }: { found: Found }) {
  const words = useWords()
  const { lead, name, detail } = foundWords(words, found)
  return (
    <>
      <span>
        <span className="lead">{lead}</span>
        {name} <small>{detail}</small>
      </span>
      {found.stage ? <Standing stage={found.stage} /> : <small>{words.screens.find.kinds[found.kind]}</small>}
    </>
  )
}
