import { useQueryClient } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { useShop } from '../shop.tsx'

/** Asks whether the computer's clock is right, while what was entered last speaks against it: until then nothing is written. */
export function DoubtedClock() {
  const { doubtedClock, formats, words } = useShop()
  const { clock } = words.screens
  const cache = useQueryClient()
  const act = useAct((today: string) => answer(api.shop.confirmClock.$post({ json: { today } })), {
    said: () => clock.confirmed,
  })
  if (!doubtedClock) return null
  const { doubt, today, lastOn } = doubtedClock
  const days = { today: formats.date(today), last: formats.date(lastOn) }
  return (
    <section className="note asked-first" role="alert" aria-label={clock.title}>
      <h2>{clock.title}</h2>
      <p>{clock[doubt](days)}</p>
      <p>{clock.why}</p>
      <div className="buttons">
        <ActButton act={act} input={today}>
          {clock.right(days)}
        </ActButton>
        <button type="button" className="second" onClick={() => void cache.invalidateQueries()}>
          {clock.setRight}
        </button>
      </div>
    </section>
  )
}
