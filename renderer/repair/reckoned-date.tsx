import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { Facts } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

interface Props {
  readonly number: number
  /** Takes the reckoned date over. */
  readonly take: (date: string) => void
}

/** The date reckoned from the bench queue, what is away and the run-in, each told apart; nothing while its hours are not known. */
export function ReckonedDate({ number, take }: Props) {
  const { words, formats } = useShop()
  const { dateForm } = words.repair
  const { data } = useQuery({
    queryKey: ['repair', number, 'date'],
    queryFn: () => answer(api.pages.repairs[':number'].date.$get({ param: { number: String(number) } })),
  })
  const suggested = data?.suggested
  if (!suggested) return null
  const day = (local: string) => formats.date(local.slice(0, 10))
  const parts = suggested.parts.map(
    ({ part, from, to }) => [dateForm.parts[part], dateForm.span(day(from), day(to))] as const,
  )
  return (
    <section aria-label={dateForm.reckoned}>
      <p className="quiet">{dateForm.reckoned}</p>
      <Facts facts={parts} />
      <button type="button" className="second" onClick={() => take(suggested.readyOn)}>
        {dateForm.use(formats.date(suggested.readyOn))}
      </button>
    </section>
  )
}
