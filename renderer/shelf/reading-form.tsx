import type { KeyboardEvent } from 'react'
import { shelfClock } from '../../core/run-in/shelf-clock.ts'
import { type ShelfEvent, shelfEvents } from '../../core/run-in/shelf-reading.ts'
import { type HeardNow, heardNow, hourBlows } from '../../core/run-in/strike-heard.ts'
import type { Bound, EntryState } from '../parts/entry.ts'
import { Choice, DecimalField, TextField, Tick } from '../parts/field.tsx'
import { TimeField } from '../parts/time-field.tsx'
import { neededNumber, numberOrNull, orNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { RoundRow } from './shelf.ts'

/** Right, wrong, or not said: as three answers of one key. */
export type Said = '' | 'right' | 'wrong'

/** A reading as it is being typed. */
export interface TypedReading {
  readonly error: string
  readonly sure: boolean
  readonly at: string
  readonly wound: boolean
  readonly hourShown: string
  readonly hourCounted: string
  readonly half: string
  readonly quarter: string
  readonly quarterSaid: Said
  readonly twelveRight: boolean
  readonly fourRight: boolean
  readonly selfCorrected: Said
  readonly silent: Said
  readonly repeats: Said
  readonly inBeat: Said
  readonly stopped: boolean
  readonly handsSet: boolean
  readonly left: string
  readonly nutTurns: string
  readonly event: '' | ShelfEvent
  readonly temperatureC: string
  readonly note: string
}

export const blankReading: TypedReading = {
  error: '',
  sure: false,
  at: '',
  wound: false,
  hourShown: '',
  hourCounted: '',
  half: '',
  quarter: '',
  quarterSaid: '',
  twelveRight: false,
  fourRight: false,
  selfCorrected: '',
  silent: '',
  repeats: '',
  inBeat: '',
  stopped: false,
  handsSet: false,
  left: '0',
  nutTurns: '',
  event: '',
  temperatureC: '',
  note: '',
}

const answered = (said: Said): boolean | null => (said === '' ? null : said === 'right')

/** The reading as the request takes it. */
export const readingInput = (typed: TypedReading) => ({
  error: orNull(typed.error),
  left: typed.handsSet ? (orNull(typed.left) ?? '0') : null,
  sure: typed.sure,
  at: orNull(typed.at),
  wound: typed.wound,
  stopped: typed.stopped,
  hour:
    typed.hourShown.trim() === '' && typed.hourCounted.trim() === ''
      ? null
      : { shown: neededNumber(typed.hourShown), counted: neededNumber(typed.hourCounted) },
  half: numberOrNull(typed.half),
  quarter:
    typed.quarter === ''
      ? null
      : { which: Number(typed.quarter) as 1 | 2 | 3 | 4, right: typed.quarterSaid !== 'wrong' },
  twelveRight: typed.twelveRight,
  fourRight: typed.fourRight,
  selfCorrected: answered(typed.selfCorrected),
  silent: answered(typed.silent),
  repeats: answered(typed.repeats),
  inBeat: answered(typed.inBeat),
  nutTurns: typed.nutTurns.trim(),
  event: typed.event === '' ? null : typed.event,
  temperatureC: numberOrNull(typed.temperatureC),
  note: typed.note,
})

const nextSaid: Record<Said, Said> = { '': 'right', right: 'wrong', wrong: '' }

type Clock = RoundRow['clock']

/** The strike as heard right at the last hour; pressed again, nothing is said of it. */
function strikeHeard({ hourShown }: TypedReading, now: HeardNow, clock: Clock): Partial<TypedReading> {
  if (hourShown !== '') return { hourShown: '', hourCounted: '' }
  const due = hourBlows(shelfClock(clock).strike, now.hour)
  return { hourShown: String(now.hour), hourCounted: due === null ? '' : String(due) }
}

/** The last quarter as heard right; pressed again wrong, and again nothing is said of it. */
function quarterHeard({ quarter, quarterSaid }: TypedReading, now: HeardNow): Partial<TypedReading> {
  if (quarter === '') return { quarter: String(now.quarter), quarterSaid: 'right' }
  return quarterSaid === 'wrong' ? { quarter: '', quarterSaid: '' } : { quarterSaid: 'wrong' }
}

/** What each letter does in the field of the error, where no letter belongs. */
const keys: Record<string, (typed: TypedReading, now: HeardNow, clock: Clock) => Partial<TypedReading>> = {
  w: ({ wound }) => ({ wound: !wound }),
  s: strikeHeard,
  c: quarterHeard,
  b: ({ inBeat }) => ({ inBeat: nextSaid[inBeat] }),
  x: ({ stopped }) => ({ stopped: !stopped }),
  h: ({ handsSet }) => ({ handsSet: !handsSet }),
}

interface Ticked {
  readonly entry: EntryState<TypedReading>
  readonly clock: Clock
  /** `HH:MM` of the shop's day. */
  readonly local: string
  readonly toNut: () => void
}

/** Ticks by letter while the error is typed; N opens the rest and goes to the nut. */
export function tickByKey(
  event: KeyboardEvent<HTMLInputElement>,
  { entry, clock, local, toNut }: Ticked,
): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const key = event.key.toLowerCase()
  const act = keys[key]
  if (act) entry.set(act(entry.value, heardNow(local), clock))
  if (key === 'n') toNut()
  if (act || key === 'n') event.preventDefault()
}

const strikes = ({ strike, chime }: Clock): boolean => strike !== 'none' || chime === 'ting-tang'
const chimes = ({ chime }: Clock): boolean => chime !== 'none'

/** What was seen and done, as ticks and answers with their keys. */
export function SeenTicks({ entry, clock }: { entry: EntryState<TypedReading>; clock: Clock }) {
  const { reading } = useShop().words.shelf
  return (
    <fieldset className="seen" aria-label={reading.seen}>
      <Tick label={reading.keyed('W', reading.wound)} {...entry.at('wound')} />
      {strikes(clock) && (
        <span className="heard">
          <DecimalField label={reading.keyed('S', reading.struck)} {...entry.at('hourCounted')} />
          <DecimalField label={reading.atHour} {...entry.at('hourShown')} />
        </span>
      )}
      {chimes(clock) && <Quarter entry={entry} />}
      <Answer label={reading.keyed('B', reading.beat)} {...entry.at('inBeat')} />
      <Tick label={reading.keyed('X', reading.stopped)} {...entry.at('stopped')} />
      <Tick label={reading.keyed('H', reading.handsSet)} {...entry.at('handsSet')} />
      {entry.value.handsSet && (
        <span className="heard">
          <TextField label={reading.left} {...entry.at('left')} />
        </span>
      )}
    </fieldset>
  )
}

/** Which quarter was heard, and whether it was right. */
function Quarter({ entry }: { entry: EntryState<TypedReading> }) {
  const { reading } = useShop().words.shelf
  return (
    <span className="heard">
      <Choice
        label={reading.keyed('C', reading.quarter)}
        choices={reading.quarters}
        empty={reading.unsaid}
        {...entry.at('quarter')}
      />
      {entry.value.quarter !== '' && <Answer label={reading.chime} {...entry.at('quarterSaid')} />}
    </span>
  )
}

/** One of three answers, changed by pressing: not said, right, wrong. */
function Answer({ label, name, value, onChange }: { label: string } & Bound<Said>) {
  const { reading } = useShop().words.shelf
  const said = { '': reading.unsaid, right: reading.right, wrong: reading.wrong }
  return (
    <button
      type="button"
      name={name}
      className={value === '' ? 'second answer' : `second answer ${value}`}
      onClick={() => onChange(nextSaid[value])}
    >
      {label} <b>{said[value]}</b>
    </button>
  )
}

/** What is said less often of a reading. */
export function RareFields({ entry, clock }: { entry: EntryState<TypedReading>; clock: Clock }) {
  const { words } = useShop()
  const { reading } = words.shelf
  const events = Object.fromEntries(shelfEvents.map(event => [event, words.seen[event]()]))
  return (
    <>
      <div className="fields rare">
        <DecimalField label={reading.nutTurns} hint={reading.nutHint} {...entry.at('nutTurns')} />
        <Choice label={reading.event} choices={events} empty={reading.unsaid} {...entry.at('event')} />
        {strikes(clock) && <DecimalField label={reading.half} {...entry.at('half')} />}
        <DecimalField label={reading.temperature} {...entry.at('temperatureC')} />
        <TimeField label={reading.at} hint={reading.atHint} {...entry.at('at')} />
        <TextField label={reading.note} {...entry.at('note')} />
      </div>
      {(strikes(clock) || chimes(clock)) && (
        <div className="seen">
          {strikes(clock) && <Tick label={words.seen.twelveRight()} {...entry.at('twelveRight')} />}
          {chimes(clock) && <Tick label={words.seen.fourRight()} {...entry.at('fourRight')} />}
          {chimes(clock) && <Answer label={reading.selfCorrected} {...entry.at('selfCorrected')} />}
          <Answer label={reading.silent} {...entry.at('silent')} />
          <Answer label={reading.repeats} {...entry.at('repeats')} />
        </div>
      )}
    </>
  )
}
