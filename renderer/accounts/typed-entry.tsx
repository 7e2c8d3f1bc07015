import { useState } from 'react'
import { isCivilDate } from '../../core/calendar/civil.ts'
import type { Words } from '../../core/words/en/index.ts'
import { fieldText } from '../../core/words/typed-field.ts'
import { useShop } from '../shop.tsx'

/** How values are told: ticks and codes in words, days as the shop writes them. */
interface Told {
  readonly words: Pick<Words, 'coded'> & {
    readonly accounts: { readonly dayBook: { yes: string; no: string } }
  }
  readonly date: (on: string) => string
}

/** The last name in a path: `lines[0].kind` ends in `kind`. */
const nameIn = (path: string): string =>
  path
    .replaceAll(/\[\d+\]/g, '')
    .split('.')
    .at(-1) ?? ''

function textOf(value: unknown, path: string, { words, date }: Told): string {
  if (typeof value === 'boolean') return words.accounts.dayBook[value ? 'yes' : 'no']
  const text = String(value)
  return words.coded[nameIn(path)]?.[text] ?? (isCivilDate(text) ? date(text) : text)
}

/** What was typed, one line for each field with its path; what was left empty is left out. */
export function typedLines(value: unknown, told: Told, path = ''): { path: string; text: string }[] {
  if (value === null || value === undefined || value === '') return []
  if (Array.isArray(value)) return value.flatMap((item, index) => typedLines(item, told, `${path}[${index}]`))
  if (typeof value === 'object')
    return Object.entries(value).flatMap(([key, item]) =>
      typedLines(item, told, path ? `${path}.${key}` : key),
    )
  return [{ path, text: textOf(value, path, told) }]
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
  const { words, formats } = useShop()
  const { dayBook } = words.accounts
  const lines = typedLines(JSON.parse(input), { words, date: formats.date })
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
