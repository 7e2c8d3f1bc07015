import { type Delimiter, delimiters, type Encoding, encodings } from '../../../core/import/text.ts'
import { Choice, Field } from '../../parts/field.tsx'
import { Section } from '../../parts/page.tsx'
import { useShop } from '../../shop.tsx'
import type { FileText, Table } from './read-file.ts'

interface FileChoiceProps {
  readonly read: FileText | null
  readonly table: Table | null
  readonly most: number
  readonly onFile: (file: File) => void
  /** Reads the same file otherwise. */
  readonly onRead: (encoding: Encoding, delimiter: Delimiter | null) => void
}

/** The file, how its letters and cells are told apart, and what was found in it. */
export function FileChoice({ read, table, most, onFile, onRead }: FileChoiceProps) {
  const { listImport: said } = useShop().words
  const delimiter = table && 'delimiter' in table ? table.delimiter : ','
  const names = Object.fromEntries(delimiters.map(one => [one, said.delimiters[one]]))
  return (
    <Section title={said.file}>
      <p className="quiet">{said.intro}</p>
      <div className="form">
        <Field name="file" label={said.choose}>
          {control => (
            <input
              {...control}
              type="file"
              accept=".csv,.txt,.tsv,text/csv,text/plain,text/tab-separated-values"
              onChange={event => {
                const [file] = event.target.files ?? []
                if (file) onFile(file)
              }}
            />
          )}
        </Field>
        {read && (
          <div className="fields">
            <Choice
              name="encoding"
              label={said.encoding}
              choices={Object.fromEntries(encodings.map(one => [one, said.encodings[one]]))}
              value={read.encoding}
              onChange={(encoding: Encoding) => onRead(encoding, null)}
            />
            <Choice
              name="delimiter"
              label={said.delimiter}
              choices={names}
              value={delimiter}
              onChange={(chosen: Delimiter) => onRead(read.encoding, chosen)}
            />
          </div>
        )}
      </div>
      <div role="status">
        {read && !read.isUtf8 && <p className="late">{said.notUtf8}</p>}
        {table && <Found table={table} most={most} />}
      </div>
    </Section>
  )
}

function Found({ table, most }: { table: Table; most: number }) {
  const { listImport: said } = useShop().words
  if ('unreadableFrom' in table) return <p className="late">{said.unreadable(table.unreadableFrom)}</p>
  const count = table.lines.length
  if (count === 0) return <p className="late">{said.empty}</p>
  return count > most ? <p className="late">{said.tooMany(most)}</p> : <p>{said.found(count)}</p>
}
