import type { BookHours } from '../../core/pricing/price-book.ts'
import { type Form, forms } from '../../core/vocabulary/clock.ts'
import { type Work, works } from '../../core/vocabulary/work.ts'
import { type LinesState, useLines } from '../parts/entry.ts'
import { Choice, DecimalField } from '../parts/field.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'

/** Hours of the book as typed; '' stands for any form or number of trains. */
interface TypedHours {
  readonly work: Work | ''
  readonly form: Form | ''
  readonly trains: string
  readonly hours: string
}

const blank: TypedHours = { work: '', form: '', trains: '', hours: '' }
const isBlank = ({ work, hours }: TypedHours) => work === '' && hours.trim() === ''

const typed = ({ work, form, trains, hours }: BookHours): TypedHours => ({
  work,
  form: form ?? '',
  trains: trains === null ? '' : String(trains),
  hours,
})

const trainsOf = (text: string): 1 | 2 | 3 | null =>
  text === '1' ? 1 : text === '2' ? 2 : text === '3' ? 3 : null

/** The hours being typed, beginning with those of the book. */
export const useHours = (hours: readonly BookHours[]): LinesState<TypedHours> =>
  useLines('prices.hours', blank, isBlank, hours.map(typed))

/** The hours as they are sent; where no work was chosen the request says so. */
export const keptHours = (hours: LinesState<TypedHours>) =>
  hours.written().map(({ work, form, trains, hours: each }) => ({
    work: work as Work,
    form: form || null,
    trains: trainsOf(trains),
    hours: each,
  }))

/** Hours by work, form of clock and trains, one line each; writing on the last opens the next. */
export function BookHoursTable({ hours }: { hours: LinesState<TypedHours> }) {
  return (
    <div className="book-lines">
      {hours.lines.map(({ key, blank: last }, index) => (
        <HoursLine key={key} hours={hours} index={index} last={last} />
      ))}
    </div>
  )
}

function HoursLine({ hours, index, last }: { hours: LinesState<TypedHours>; index: number; last: boolean }) {
  const { words } = useShop()
  const said = words.shop.prices
  const of = said.lineOf(index + 1)
  const labelled = (label: string) => (index === 0 ? label : `${label}, ${of}`)
  const hideLabel = index > 0
  const formWords = Object.fromEntries(Object.keys(forms).map(form => [form, words.forms[form as Form]]))
  const workWords = Object.fromEntries(works.map(work => [work, words.lineWorks[work]]))
  return (
    <div className="book-hours">
      <Choice
        label={labelled(said.work)}
        hideLabel={hideLabel}
        choices={workWords}
        empty={said.noWork}
        {...hours.at(index, 'work')}
      />
      <Choice
        label={labelled(said.form)}
        hideLabel={hideLabel}
        choices={formWords}
        empty={said.anyForm}
        {...hours.at(index, 'form')}
      />
      <Choice
        label={labelled(said.trains)}
        hideLabel={hideLabel}
        choices={{ '1': '1', '2': '2', '3': '3' }}
        empty={said.anyTrains}
        {...hours.at(index, 'trains')}
      />
      <DecimalField label={labelled(said.hours)} hideLabel={hideLabel} {...hours.at(index, 'hours')} />
      {last ? <span /> : <RemoveLine what={of} onRemove={() => hours.remove(index)} />}
    </div>
  )
}
