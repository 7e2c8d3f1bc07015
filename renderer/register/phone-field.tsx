import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { answer, api } from '../api.ts'
import type { Bound } from '../parts/entry.ts'
import { TextField, Tick } from '../parts/field.tsx'
import { useProblem } from '../parts/problems.tsx'
import { useShop } from '../shop.tsx'

interface PhoneFieldProps extends Bound<string> {
  readonly label: string
  readonly hint?: string
  /** Whether it is kept as it is written, where it cannot be read as a number. */
  readonly asWritten: Bound<boolean>
}

/** What the ledger reads the number as, once the field is left. */
function useReading(typed: string) {
  const [left, setLeft] = useState('')
  const text = typed.trim()
  const { data } = useQuery({
    queryKey: ['phone', left],
    enabled: left !== '',
    queryFn: ({ signal }) => answer(api.find.phone.$get({ query: { text: left } }, { init: { signal } })),
  })
  return { reading: text === left ? data : undefined, leave: () => setLeft(text) }
}

/** A telephone as people write it. What it is read as is told when the field is left; what is no number can be kept as it is written. */
export function PhoneField({ asWritten, hint, ...field }: PhoneFieldProps) {
  const said = useShop().words.register.phone
  const { reading, leave } = useReading(field.value)
  const odd = reading?.kept === null
  const refused = useProblem(field.name) !== undefined
  const told = reading && !(odd && refused) ? said.told(reading) : undefined
  return (
    <div className="phone-field">
      <TextField inputMode="tel" {...field} hint={told ?? (refused ? undefined : hint)} onLeave={leave} />
      {(odd || asWritten.value) && <Tick label={said.asWritten} {...asWritten} />}
    </div>
  )
}
