import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import { answer, api } from '../api.ts'
import { Instant } from '../parts/figures.tsx'
import { useShop } from '../shop.tsx'

/** Takings in that were begun and not finished, each a way back to what was typed. Nothing when there are none. */
export function Begun() {
  const { counter } = useShop().words
  const { data } = useQuery({
    queryKey: ['drafts', 'take-in'],
    queryFn: () => answer(api.drafts.$get({ query: { page: 'take-in' } })),
  })
  if (!data || data.drafts.length === 0) return null
  return (
    <section className="begun" aria-label={counter.begun}>
      <p className="quiet">{counter.begun}</p>
      <ul>
        {data.drafts.map(({ key, title, changedAt }) => (
          <li key={key}>
            <Link href={`/counter/take-in?draft=${key}`}>{title || counter.nobodyYet}</Link>{' '}
            <small className="quiet">
              <Instant at={changedAt} />
            </small>
          </li>
        ))}
      </ul>
    </section>
  )
}
