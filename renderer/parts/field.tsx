import { type ReactNode, useId, useState } from 'react'
import { localDecimal, plainDecimal } from '../../core/words/typed-decimal.ts'
import type { ShownProblem } from '../api.ts'
import { useLocale } from '../shop.tsx'
import type { Bound } from './entry.ts'
import { useProblem } from './problems.tsx'

/** What every control of a field carries. */
export interface ControlProps {
  readonly id: string
  readonly name: string
  readonly 'aria-describedby': string | undefined
  readonly 'aria-invalid': true | undefined
}

export interface FieldProps {
  readonly name: string
  readonly label: string
  readonly hint?: ReactNode
  /** For the whole row of a form. */
  readonly wide?: boolean
  /** The label is for screen readers alone, where a column's heading or a sentence shows it. */
  readonly hideLabel?: boolean
}

interface BelowProps {
  readonly id: string
  readonly hint: ReactNode
  readonly problem: ShownProblem | undefined
}

/** What stands below a control, by the ids that describe it to screen readers. */
const describedBy = ({ id, hint, problem }: BelowProps): string | undefined =>
  [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(' ') || undefined

/** The hint and the problem of a control. */
function Below({ id, hint, problem }: BelowProps) {
  return (
    <>
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {problem && (
        <span className="problem" id={`${id}-problem`}>
          {problem.message}
        </span>
      )}
    </>
  )
}

/** A control with its label above, its hint below it and its problem beside it, tied together for screen readers. */
export function Field(props: FieldProps & { children: (control: ControlProps) => ReactNode }) {
  const { name, label, hint, wide, hideLabel, children } = props
  const id = useId()
  const problem = useProblem(name)
  return (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={id} className={hideLabel ? 'hidden-words' : undefined}>
        {label}
      </label>
      {children({
        id,
        name,
        'aria-describedby': describedBy({ id, hint, problem }),
        'aria-invalid': problem ? true : undefined,
      })}
      <Below id={id} hint={hint} problem={problem} />
    </div>
  )
}

type TextProps = FieldProps &
  Bound<string> & {
    readonly autoComplete?: string
    readonly inputMode?: 'text' | 'tel' | 'email' | 'numeric'
    readonly maxLength?: number
    readonly list?: string
    /** The field is left. */
    readonly onLeave?: () => void
  }

/** One line of text. */
export function TextField(props: TextProps) {
  const { value, onChange, autoComplete = 'off', inputMode, maxLength, list, onLeave } = props
  return (
    <Field {...props}>
      {control => (
        <input
          {...control}
          value={value}
          onChange={event => onChange(event.target.value)}
          onBlur={onLeave}
          autoComplete={autoComplete}
          inputMode={inputMode}
          maxLength={maxLength}
          list={list}
        />
      )}
    </Field>
  )
}

/** Several lines of text. */
export function TextArea(props: FieldProps & Bound<string> & { readonly rows?: number }) {
  const { value, onChange, rows = 2 } = props
  return (
    <Field {...props}>
      {control => (
        <textarea {...control} value={value} rows={rows} onChange={event => onChange(event.target.value)} />
      )}
    </Field>
  )
}

/** A decimal number or amount as typed, kept as text; `unit` stands behind it. */
export function DecimalField(props: FieldProps & Bound<string> & { readonly unit?: string }) {
  const { value, onChange, unit } = props
  const locale = useLocale()
  const [typed, setTyped] = useState(() => localDecimal(value, locale))
  // What was set from outside, as by a choice that fills the field, is shown in place of what was typed.
  const shown = plainDecimal(typed, locale) === value ? typed : localDecimal(value, locale)
  return (
    <Field {...props}>
      {control => (
        <span className="unit">
          <input
            {...control}
            className="decimal"
            inputMode="decimal"
            autoComplete="off"
            value={shown}
            onChange={event => {
              // The sign stands behind the box already; typed along with the figure it means the same.
              const text = unit === '%' ? event.target.value.replace(/\s*%$/, '') : event.target.value
              setTyped(text)
              onChange(plainDecimal(text, locale))
            }}
          />
          {unit}
        </span>
      )}
    </Field>
  )
}

/** A civil date `YYYY-MM-DD`, or '' for none: the browser's own date field, typed or picked. */
export function DateField(props: FieldProps & Bound<string>) {
  const { value, onChange } = props
  return (
    <Field {...props}>
      {control => (
        <input
          {...control}
          type="date"
          max="9999-12-31"
          value={value}
          onChange={event => onChange(event.target.value)}
        />
      )}
    </Field>
  )
}

/** One of a list: the codes of a vocabulary and their words. `empty` adds a first choice that stands for ''. */
export function Choice<T extends string>(
  props: FieldProps &
    Bound<T> & { readonly choices: Readonly<Record<string, string>>; readonly empty?: string },
) {
  const { value, onChange, choices, empty } = props
  return (
    <Field {...props}>
      {control => (
        <select {...control} value={value} onChange={event => onChange(event.target.value as T)}>
          {empty !== undefined && <option value="">{empty}</option>}
          {Object.entries(choices).map(([code, words]) => (
            <option key={code} value={code}>
              {words}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}

/** One of a few, all in sight; null while none is chosen. */
export function FewChoice<T extends string>(
  props: FieldProps & {
    readonly value: T | null
    readonly onChange: (value: T) => void
    readonly choices: Readonly<Record<T, string>>
  },
) {
  const { name, label, hint, wide, hideLabel, value, onChange, choices } = props
  const id = useId()
  const problem = useProblem(name)
  return (
    <fieldset className={wide ? 'field wide' : 'field'} aria-describedby={describedBy({ id, hint, problem })}>
      <legend className={hideLabel ? 'hidden-words' : undefined}>{label}</legend>
      <span className="choices">
        {(Object.entries(choices) as [T, string][]).map(([code, words]) => (
          <label key={code} className="tick">
            <input
              type="radio"
              name={name}
              value={code}
              checked={value === code}
              onChange={() => onChange(code)}
            />
            {words}
          </label>
        ))}
      </span>
      <Below id={id} hint={hint} problem={problem} />
    </fieldset>
  )
}

/** Yes or no. */
export function Tick({ name, label, hint, value, onChange }: FieldProps & Bound<boolean>) {
  const id = useId()
  const problem = useProblem(name)
  return (
    <div className="field">
      <label className="tick">
        <input
          type="checkbox"
          name={name}
          checked={value}
          aria-describedby={describedBy({ id, hint, problem })}
          aria-invalid={problem ? true : undefined}
          onChange={event => onChange(event.target.checked)}
        />
        <span>{label}</span>
      </label>
      <Below id={id} hint={hint} problem={problem} />
    </div>
  )
}
