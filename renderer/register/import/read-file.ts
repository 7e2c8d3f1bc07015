import { type Delimiter, type Encoding, likelyDelimiter } from '../../../core/import/text.ts'

/** The bytes of a chosen file as letters. */
export interface FileText {
  readonly name: string
  readonly text: string
  readonly encoding: Encoding
  /** False where the bytes are not UTF-8, whatever they were read as. */
  readonly isUtf8: boolean
}

/** Reads the file in the encoding asked for, or in what it most likely is; a byte order mark is no letter of it. */
export async function fileText(file: File, asked: Encoding | null = null): Promise<FileText> {
  const bytes = await file.arrayBuffer()
  const utf8 = decoded(bytes)
  const encoding = asked ?? (utf8 === null ? 'windows-1252' : 'utf-8')
  const text = encoding === 'utf-8' && utf8 !== null ? utf8 : new TextDecoder(encoding).decode(bytes)
  return { name: file.name, text, encoding, isUtf8: utf8 !== null }
}

function decoded(bytes: ArrayBuffer): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

/** One line of the file: its cells, and where it begins, counted from 1. */
export interface FileLine {
  readonly line: number
  readonly cells: readonly string[]
}

/** The file as a table, or the line from which it cannot be read. */
export type Table =
  | {
      readonly headings: readonly string[]
      readonly lines: readonly FileLine[]
      readonly delimiter: Delimiter
    }
  | { readonly unreadableFrom: number }

/** The text as a table (RFC 4180), the delimiter found where none is said. Lines without a cell are no lines. */
export async function tableOf(text: string, asked: Delimiter | null = null): Promise<Table> {
  const { CsvError, parse } = await import('csv-parse/browser/esm/sync')
  const delimiter = asked ?? likelyDelimiter(text)
  try {
    // With one kind of line break inside the quotes as outside, the reader counts every line once.
    const plain = text.replaceAll(/\r\n?/g, '\n')
    const options = { delimiter, bom: true, info: true, relax_column_count: true }
    const records = parse(plain, options) as unknown as readonly Parsed[]
    const lines = records.map(({ record, info }) => ({ line: info.lines - breaksIn(record), cells: record }))
    const [head, ...rest] = lines.filter(({ cells }) => cells.some(cell => cell.trim() !== ''))
    return { headings: head?.cells ?? [], lines: rest, delimiter }
  } catch (error) {
    if (error instanceof CsvError) return { unreadableFrom: Number(error.lines ?? 1) }
    throw error
  }
}

interface Parsed {
  readonly record: readonly string[]
  /** The line the record ends on, counted from 1. */
  readonly info: { readonly lines: number }
}

/** The line breaks inside the cells, which tell where a record began. */
const breaksIn = (cells: readonly string[]): number =>
  cells.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0)
