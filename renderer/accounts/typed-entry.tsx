import { useState } from 'react'
import { fieldText } from '../../core/words/typed-field.ts'
import { useShop } from '../shop.tsx'

/** What was typed, one line for each field with its path; ticks in words; what was left empty is left out. */
export function typedLines(
  value: unknown,
  yesNo: { yes: string; no: string },
  path = '',
): { path: string; text: string }[] {
  if (value === null || value === undefined || value === '') return []
  if (Array.isArray(value))
    return value.flatMap((item, index) => typedLines(item, yesNo, `${path}[${index}]`))
  if (typeof value === 'object')
    return Object.entries(value).flatMap(([key, item]) =>
      typedLines(item, yesNo, path ? `${path}.${key}` : key),
    )
  return [{ path, text: typeof value === 'boolean' ? yesNo[value ? 'yes' : 'no'] : String(value) }]
}

/** The entry as typed, folded away until it is asked for. */
export function TypedEntry({ number, input }: { number: number; input: string }) {
  const { dayBook } = useShop().words.accounts
  const [open, setOpen] = useState(false)
  return (
    <details className="typed" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary aria-label={dayBook.typedOf(number)}>{dayBook.typed}</summary>
      {open && <Typed input={input} />}
    </details>
  )
}

function Typed({ input }: { input: string }) {
  const { dayBook } = useShop().words.accounts
  const lines = typedLines(JSON.parse(input), dayBook)
  if (lines.length === 0) return <p className="quiet">{dayBook.nothingTyped}</p>
  return (
    <dl className="facts">
      {lines.map(({ path, text }) => (
        <div key={path} className="fact">
          <dt>{fieldText(path)}</dt>
          <dd className="several-lines">{text}</dd>
        </div>
      ))}
    </dl>
  )
}
