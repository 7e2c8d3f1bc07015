import { type FormEvent, useState } from 'react'
import { useLocation } from 'wouter'
import { typedOrScanned } from '../../core/papers/repair-code.ts'
import { isToCollect } from '../../core/standing/stages.ts'
import { answer, api } from '../api.ts'
import { useSay } from '../parts/announcer.tsx'
import { EntryLine } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import type { CounterRow } from './counter-row.ts'

/** Where a typed line leads: a number to its repair (when there is one), a name to taking in. */
async function whereTo(text: string): Promise<string | undefined> {
  if (!/^\d{1,9}$/.test(text)) return `/counter/take-in${text && `?owner=${encodeURIComponent(text)}`}`
  const { results } = await answer(api.find.$get({ query: { q: text } }))
  return results.some(({ kind, number }) => kind === 'repair' && number === text)
    ? `/counter/${text}`
    : undefined
}

const canHandOver = (row: CounterRow) => isToCollect(row.stage)

/** The line at the foot: a name to take in, a number to open; beside it the chosen line's plain next step. */
export function CounterLine({ chosen }: { chosen: CounterRow | undefined }) {
  const { line } = useShop().words.counter
  const [, navigate] = useLocation()
  const say = useSay()
  const [text, setText] = useState('')
  const go = async (event: FormEvent) => {
    event.preventDefault()
    const place = await whereTo(typedOrScanned(text))
    if (place) navigate(place)
    else say(line.notFound(typedOrScanned(text)))
  }
  return (
    <EntryLine label={line.label}>
      <form onSubmit={go}>
        <label htmlFor="counter-line">{line.name}</label>
        <div className="control">
          <input
            id="counter-line"
            autoComplete="off"
            value={text}
            onChange={event => setText(event.target.value)}
          />
        </div>
        <div className="buttons">
          <button type="submit">{line.takeIn}</button>
          {chosen && (
            <button
              type="button"
              className="second"
              onClick={() => navigate(`/counter/${chosen.number}${canHandOver(chosen) ? '/hand-over' : ''}`)}
            >
              {canHandOver(chosen) ? line.handOver(chosen.number) : line.open(chosen.number)}
            </button>
          )}
        </div>
      </form>
    </EntryLine>
  )
}
