import type { ClockSize } from '../../core/measures/measures.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import { orNotLookedAt } from '../clock-words.ts'
import type { EntryState } from '../parts/entry.ts'
import { Choice, TextField, Tick } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import type { ClockView } from './clock.ts'

/** A clock as typed; '' and 'unknown' where nobody has looked yet. */
export type TypedClock = Omit<ClockView['clock'], 'id' | 'trains' | 'notes' | keyof ClockSize> & {
  readonly trains: string
}

/** A clock nobody has looked at yet. */
export const unseenClock = (form: Form): TypedClock => ({
  form,
  maker: '',
  serial: '',
  marks: '',
  trains: '',
  power: 'unknown',
  duration: 'unknown',
  escapement: 'unknown',
  strike: 'unknown',
  chime: 'unknown',
  chimeCorrects: false,
  beats: '',
  dial: 'unknown',
  jewelled: false,
  luminous: false,
  mercury: false,
  mains: false,
})

/** What is on record of a clock, as it is typed; it is measured by itself. */
export const typedClock = ({
  id: _,
  trains,
  heightMm: _height,
  widthMm: _width,
  depthMm: _depth,
  weightG: _weight,
  ...clock
}: ClockView['clock']) => ({
  ...clock,
  trains: trains === null ? '' : String(trains),
})

const numberOrNull = (text: string): number | null => (text.trim() ? Number(text) : null)

/** What was typed of a clock, as the request takes it. */
export const describedClock = <T extends TypedClock>({ trains, ...clock }: T) => ({
  ...clock,
  trains: numberOrNull(trains),
})

/** What a clock is known by at first sight. */
export function SightFields<T extends TypedClock>({ entry }: { entry: EntryState<T> }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  return (
    <>
      <Choice label={takeIn.form} choices={words.forms} {...entry.at('form')} />
      <Choice label={takeIn.dial} choices={orNotLookedAt(words, words.dials)} {...entry.at('dial')} />
      <TextField label={takeIn.maker} wide {...entry.at('maker')} />
      <TextField label={takeIn.serial} {...entry.at('serial')} />
    </>
  )
}

/** What is seen of the movement once somebody looks, and what is seldom asked at the counter. */
export function MovementFields<T extends TypedClock>({ entry }: { entry: EntryState<T> }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const trains = Object.fromEntries([1, 2, 3].map(count => [count, words.papers.trains(count)]))
  const seen = (choices: Readonly<Record<string, string>>) => orNotLookedAt(words, choices)
  return (
    <>
      <div className="fields">
        <Choice label={takeIn.trains} choices={trains} empty={words.notLookedAt} {...entry.at('trains')} />
        <Choice label={takeIn.power} choices={seen(words.powers)} {...entry.at('power')} />
        <Choice label={takeIn.duration} choices={seen(words.durations)} {...entry.at('duration')} />
        <Choice label={takeIn.escapement} choices={seen(words.escapements)} {...entry.at('escapement')} />
        <Choice label={takeIn.strike} choices={seen(words.strikes)} {...entry.at('strike')} />
        <Choice label={takeIn.chime} choices={seen(words.chimes)} {...entry.at('chime')} />
        <TextField label={takeIn.beats} hint={takeIn.beatsHint} {...entry.at('beats')} />
        <TextField label={takeIn.marks} wide {...entry.at('marks')} />
      </div>
      <div className="choices">
        <Tick label={takeIn.chimeCorrects} {...entry.at('chimeCorrects')} />
        <Tick label={takeIn.jewelled} {...entry.at('jewelled')} />
        <Tick label={takeIn.luminous} {...entry.at('luminous')} />
        <Tick label={takeIn.mercury} {...entry.at('mercury')} />
        <Tick label={takeIn.mains} {...entry.at('mains')} />
      </div>
    </>
  )
}
