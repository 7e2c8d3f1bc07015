import { type ImportField, importFields, type Mapping } from '../../../core/import/fields.ts'
import { Choice } from '../../parts/field.tsx'
import { Ledger } from '../../parts/ledger.tsx'
import { Section } from '../../parts/page.tsx'
import { useShop } from '../../shop.tsx'
import type { Table } from './read-file.ts'

interface ColumnsProps {
  readonly table: Extract<Table, { headings: unknown }>
  readonly mapping: Mapping
  readonly onMap: (mapping: Mapping) => void
}

/** What each column of the file stands for, guessed by its heading and changed by hand. */
export function Columns({ table: { headings, lines }, mapping, onMap }: ColumnsProps) {
  const { listImport: said } = useShop().words
  const fields = Object.fromEntries(
    Object.keys(importFields).map(field => [field, said.fields[field as ImportField]]),
  )
  const rows = headings.map((heading, index) => ({ heading: heading.trim() || String(index + 1), index }))
  const cells = (index: number) =>
    lines
      .slice(0, 3)
      .map(({ cells: line }) => line[index]?.trim())
      .filter(Boolean)
      .join(' · ')
  return (
    <Section title={said.columns}>
      <Ledger
        plain
        caption={said.columns}
        groups={[{ title: '', rows }]}
        rowKey={row => row.index}
        empty={said.empty}
        columns={[
          { label: said.column, kind: 'text', cell: row => <b>{row.heading}</b> },
          {
            label: said.means,
            kind: 'text',
            cell: ({ heading, index }) => (
              <Choice
                name={`columns[${index}]`}
                label={said.meansOf(heading)}
                hideLabel
                choices={fields}
                empty={said.leftOut}
                value={mapping[index] ?? ''}
                onChange={(field: ImportField | '') =>
                  onMap(mapping.map((one, i) => (i === index ? field || null : one)))
                }
              />
            ),
          },
          {
            label: said.first,
            kind: 'entry',
            cell: row => <span className="quiet">{cells(row.index)}</span>,
          },
        ]}
      />
    </Section>
  )
}
