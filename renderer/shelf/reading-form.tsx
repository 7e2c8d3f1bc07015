import type { KeyboardEvent } from 'react'
import { patternOf } from '../../core/run-in/limits.ts'
import { blowsDue } from '../../core/run-in/shown.ts'
import type { Bound, EntryState } from '../parts/entry.ts'
import { DecimalField, TextField, Tick } from '../parts/field.tsx'
import { TimeField } from '../parts/time-field.tsx'
import { numberOrNull, orNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { RoundRow } from './shelf.ts'

/** Right, wrong, or not said: as three answers of one key. */
export type Said = '' | 'right' | 'wrong'

/** A reading as it is being typed. */
export interface TypedReading {
  readonly error: string
  readonly at: string
  readonly wound: boolean
  readonly strikeRight: Said
  readonly chimeRight: Said
  readonly inBeat: Said
  readonly stopped: boolean
  readonly handsSet: boolean
  readonly nutTurns: string
  readonly heardAt: string
  readonly blows: string
  readonly temperatureC: string
  readonly note: string
}

export const blankReading: TypedReading = {
  error: '',
  at: '',
  wound: false,
  strikeRight: '',
  chimeRight: '',
  inBeat: '',
  stopped: false,
  handsSet: false,
  nutTurns: '',
  heardAt: '',
  blows: '',
  temperatureC: '',
  note: '',
}

const answered = (said: Said): boolean | null => (said === '' ? null : said === 'right')

/** The reading as the request takes it. */
export const readingInput = (typed: TypedReading) => ({
  ...typed,
  error: orNull(typed.error),
  at: orNull(typed.at),
  strikeRight: answered(typed.strikeRight),
  chimeRight: answered(typed.chimeRight),
  inBeat: answered(typed.inBeat),
  nutTurns: typed.nutTurns.trim(),
  heardAt: typed.heardAt.trim(),
  blows: numberOrNull(typed.blows),
  temperatureC: numberOrNull(typed.temperatureC),
})

const nextSaid: Record<Said, Said> = { '': 'right', right: 'wrong', wrong: '' }

/** What each letter does in the field of the error, where no letter belongs. */
const keys: Record<string, (typed: TypedReading) => Partial<TypedReading>> = {
  w: ({ wound }) => ({ wound: !wound }),
  s: ({ strikeRight }) => ({ strikeRight: nextSaid[strikeRight] }),
  c: ({ chimeRight }) => ({ chimeRight: nextSaid[chimeRight] }),
  b: ({ inBeat }) => ({ inBeat: nextSaid[inBeat] }),
  x: ({ stopped }) => ({ stopped: !stopped }),
  h: ({ handsSet }) => ({ handsSet: !handsSet }),
}

/** Ticks by letter while the error is typed; N opens the rest and goes to the nut. */
export function tickByKey(
  event: KeyboardEvent<HTMLInputElement>,
  entry: EntryState<TypedReading>,
  toNut: () => void,
): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const key = event.key.toLowerCase()
  const act = keys[key]
  if (act) entry.set(act(entry.value))
  if (key === 'n') toNut()
  if (act || key === 'n') event.preventDefault()
}

/** What was seen and done, as ticks and answers with their keys. */
export function SeenTicks({ entry, clock }: { entry: EntryState<TypedReading>; clock: RoundRow['clock'] }) {
  const { reading } = useShop().words.shelf
  return (
    <fieldset className="seen" aria-label={reading.seen}>
      <Tick label={reading.keyed('W', reading.wound)} {...entry.at('wound')} />
      {clock.strike !== 'none' && (
        <Answer label={reading.keyed('S', reading.strike)} {...entry.at('strikeRight')} />
      )}
      {clock.chime !== 'none' && (
        <Answer label={reading.keyed('C', reading.chime)} {...entry.at('chimeRight')} />
      )}
      <Answer label={reading.keyed('B', reading.beat)} {...entry.at('inBeat')} />
      <Tick label={reading.keyed('X', reading.stopped)} {...entry.at('stopped')} />
      <Tick label={reading.keyed('H', reading.handsSet)} {...entry.at('handsSet')} />
    </fieldset>
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
export function RareFields({ entry, clock }: { entry: EntryState<TypedReading>; clock: RoundRow['clock'] }) {
  const { reading } = useShop().words.shelf
  const due = blowsDue(patternOf(clock), entry.value.heardAt)
  return (
    <div className="fields rare">
      <DecimalField label={reading.nutTurns} hint={reading.nutHint} {...entry.at('nutTurns')} />
      <TextField label={reading.heardAt} hint={reading.heardHint} {...entry.at('heardAt')} />
      <DecimalField
        label={reading.blows}
        hint={due === null ? undefined : reading.blowsDue(due)}
        {...entry.at('blows')}
      />
      <DecimalField label={reading.temperature} {...entry.at('temperatureC')} />
      <TimeField label={reading.at} hint={reading.atHint} {...entry.at('at')} />
      <TextField label={reading.note} {...entry.at('note')} />
    </div>
  )
}
