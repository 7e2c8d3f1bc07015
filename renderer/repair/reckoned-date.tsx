import { useQuery } from '@tanstack/react-query'
import type { EstimatedDate } from '../../core/estimated-date/estimated-date.ts'
import { answer, api } from '../api.ts'
import { Facts } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

interface ReckonedProps {
  /** What it was reckoned from, in words. */
  readonly label: string
  readonly suggested: EstimatedDate | null | undefined
  /** Takes the reckoned date over. */
  readonly take: (date: string) => void
}

/** A reckoned date to be taken over, its parts told apart so that the run-in is not taken for delay; nothing while its hours are not known. */
export function Reckoned({ label, suggested, take }: ReckonedProps) {
  const { words, formats } = useShop()
  const { dateForm } = words.repair
  if (!suggested) return null
  const day = (local: string) => formats.date(local.slice(0, 10))
  const parts = suggested.parts.map(
    ({ part, from, to }) => [dateForm.parts[part], dateForm.span(day(from), day(to))] as const,
  )
  return (
    <section className="reckoned" aria-label={label}>
      <p className="quiet">{label}</p>
      <Facts facts={parts} />
      <button type="button" className="second" onClick={() => take(suggested.readyOn)}>
        {dateForm.use(formats.date(suggested.readyOn))}
      </button>
    </section>
  )
}

/** The date of a repair reckoned from the bench queue, what is away and the run-in. */
export function ReckonedDate({ number, take }: { number: number; take: ReckonedProps['take'] }) {
  const { dateForm } = useShop().words.repair
  const { data } = useQuery({
    queryKey: ['repair', number, 'date'],
    queryFn: () => answer(api.pages.repairs[':number'].date.$get({ param: { number: String(number) } })),
  })
  return <Reckoned label={dateForm.reckoned} suggested={data?.suggested} take={take} />
}
