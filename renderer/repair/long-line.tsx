import type { KeyboardEvent } from 'react'
import type { Bound } from '../parts/entry.ts'
import { Field, type FieldProps } from '../parts/field.tsx'

/** Enter does what it does in any one-line field. */
function sendOnEnter(event: KeyboardEvent<HTMLTextAreaElement>): void {
  if (event.key !== 'Enter' || event.ctrlKey || event.metaKey) return
  event.preventDefault()
  event.currentTarget.form?.requestSubmit()
}

/** One line of text that is shown whole, however long it gets; it holds no line break. */
export function LongLine(props: FieldProps & Bound<string>) {
  const { value, onChange } = props
  return (
    <Field {...props}>
      {control => (
        <textarea
          {...control}
          className="long-line"
          rows={1}
          value={value}
          onKeyDown={sendOnEnter}
          onChange={event => onChange(event.target.value.replaceAll(/[\r\n]+/g, ' '))}
        />
      )}
    </Field>
  )
}
