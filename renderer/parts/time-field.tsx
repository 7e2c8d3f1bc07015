import { useState } from 'react'
import { momentOf } from '../../core/calendar/moment.ts'
import { plainTime } from '../../core/words/typed-time.ts'
import { useShop } from '../shop.tsx'
import type { Bound } from './entry.ts'
import { Field, type FieldProps } from './field.tsx'

/** A time of the shop's own clock as it is typed (`09:20`, `25 Nov 09:20`), kept as a plain local time; below it how it was read. */
export function TimeField(props: FieldProps & Bound<string>) {
  const { value, onChange, hint } = props
  const { words, formats, settings, today } = useShop()
  const [typed, setTyped] = useState(value)
  const { locale, timeZone } = settings.place
  const plain = (text: string) => plainTime(text, { today, locale })
  // What was set from outside, as by a form emptied for the next entry, is shown in place of what was typed.
  const shown = plain(typed) === value ? typed : value
  const at = value === '' ? undefined : momentOf(value, timeZone)
  return (
    <Field {...props} hint={at === undefined ? hint : words.screens.form.readAs(formats.instant(at))}>
      {control => (
        <input
          {...control}
          value={shown}
          autoComplete="off"
          onChange={event => {
            setTyped(event.target.value)
            onChange(plain(event.target.value))
          }}
        />
      )}
    </Field>
  )
}
