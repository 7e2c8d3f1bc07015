import { gather, unless, whenGood } from '../checked.ts'
import { type Checked, good, problem } from '../problems.ts'
import type { Dial, Form, OrUnknown } from '../vocabulary/clock.ts'
import type { ImportField, Mapping } from './fields.ts'

/** The words a code of the file may be written in: the shop's own. */
export interface ImportWords {
  readonly forms: Readonly<Record<Form, string>>
  readonly dials: Readonly<Record<Dial, string>>
}

/** An owner as the file tells it. */
export interface ImportedOwner {
  readonly name: string
  readonly address: string
  readonly country: string
  readonly notes: string
  readonly contacts: readonly {
    readonly kind: 'phone' | 'e-mail'
    readonly value: string
    readonly preferred: boolean
    /** A phone that is no number is kept as it is written. */
    readonly asWritten?: boolean
  }[]
}

/** A clock as the file tells it; what the file does not say is as usual for the form. */
export interface ImportedClock {
  readonly form: Form
  readonly maker: string
  readonly serial: string
  readonly marks: string
  /** null where the list does not tell. */
  readonly trains: number | null
  readonly dial: OrUnknown<Dial>
  readonly notes: string
}

/** One line of the file as it would be entered. */
export interface ImportedRow {
  /** Where it begins in the file, counted from 1. */
  readonly line: number
  readonly owner: ImportedOwner
  readonly clock: ImportedClock | null
}

/** The cells of a column's meaning, without blanks at the ends and without empty ones. */
const cellsOf = (cells: readonly string[], mapping: Mapping, field: ImportField): string[] =>
  mapping.flatMap((one, i) => (one === field ? [(cells[i] ?? '').trim()] : [])).filter(Boolean)

const same = (text: string) =>
  text
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, '')
    .replace(/clock$|dial$/, '')

/** The code that a text means, by the code itself or its words; `import.unknownWord` where there is none. */
function codeOf<Code extends string>(
  text: string,
  words: Readonly<Record<Code, string>>,
  field: string,
): Checked<Code | null> {
  if (text === '') return good(null)
  const codes = Object.keys(words) as Code[]
  const code = codes.find(one => same(one) === same(text) || same(words[one]) === same(text))
  return unless(code ? [] : [problem('import.unknownWord', field, { text })], () => code ?? null)
}

function trainsOf(text: string): Checked<number | null> {
  if (text === '') return good(null)
  return unless(/^[1-3]$/.test(text) ? [] : [problem('runIn.trains', 'clock.trains')], () => Number(text))
}

function ownerOf(cells: readonly string[], mapping: Mapping, phonesAsWritten: boolean): ImportedOwner {
  const all = (field: ImportField) => cellsOf(cells, mapping, field)
  const ways = [
    ...all('phone').map(value => ({
      kind: 'phone' as const,
      value,
      ...(phonesAsWritten ? { asWritten: true } : {}),
    })),
    ...all('e-mail').map(value => ({ kind: 'e-mail' as const, value })),
  ]
  return {
    name: all('name').join(' '),
    address: all('address').join('\n'),
    country: all('country').join('').toUpperCase(),
    notes: all('notes').join('\n'),
    contacts: ways.map((way, i) => ({ ...way, preferred: i === 0 })),
  }
}

function clockOf(
  cells: readonly string[],
  mapping: Mapping,
  words: ImportWords,
): Checked<ImportedClock | null> {
  const one = (field: ImportField) => cellsOf(cells, mapping, field).join(' ')
  const written = ['form', 'maker', 'serial', 'marks', 'trains', 'dial', 'clockNotes'] as const
  if (written.every(field => one(field) === '')) return good(null)
  const read = gather({
    form: codeOf(one('form'), words.forms, 'clock.form'),
    dial: codeOf(one('dial'), words.dials, 'clock.dial'),
    trains: trainsOf(one('trains')),
  })
  return whenGood(read, ({ form: told, dial, trains }) => {
    return good({
      form: told ?? 'other',
      maker: one('maker'),
      serial: one('serial'),
      marks: one('marks'),
      trains,
      dial: dial ?? 'unknown',
      notes: one('clockNotes'),
    })
  })
}

/**
 * A line's cells as an owner and a clock, or what in it cannot be read; names and contacts are checked by the ledger. With
 * `phonesAsWritten` a telephone that is no number is kept as it is written.
 */
export const importedRow = (
  cells: readonly string[],
  line: number,
  mapping: Mapping,
  words: ImportWords,
  phonesAsWritten = false,
): Checked<ImportedRow> =>
  whenGood(clockOf(cells, mapping, words), clock =>
    good({ line, owner: ownerOf(cells, mapping, phonesAsWritten), clock }),
  )
