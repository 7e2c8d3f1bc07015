import './import.css'
import { useState } from 'react'
import { guessedMapping, type Mapping } from '../../../core/import/fields.ts'
import type { Delimiter, Encoding } from '../../../core/import/text.ts'
import { Page } from '../../parts/page.tsx'
import { useShop } from '../../shop.tsx'
import { Checked } from './checked.tsx'
import { Columns } from './columns.tsx'
import { FileChoice } from './file-choice.tsx'
import { Preview } from './preview.tsx'
import { type FileText, fileText, type Table, tableOf } from './read-file.ts'
import { useCheck } from './use-check.ts'

/** The longest list the ledger takes at once. */
const mostLines = 100_000

/** Enters an existing shop's owners and clocks: the file, its columns, the check of every line, and then all of it. */
export default function ImportPage() {
  const { words } = useShop()
  const said = words.listImport
  const [file, setFile] = useState<{ from: File; read: FileText; table: Table } | null>(null)
  const [mapping, setMapping] = useState<Mapping>([])
  const [phonesAsWritten, setPhonesAsWritten] = useState(false)
  const checking = useCheck()
  const take = async (from: File, encoding: Encoding | null, delimiter: Delimiter | null) => {
    const read = await fileText(from, encoding)
    const table = await tableOf(read.text, delimiter)
    checking.reset()
    setFile({ from, read, table })
    if ('headings' in table) setMapping(guessedMapping(table.headings))
  }
  const map = (changed: Mapping) => {
    checking.reset()
    setMapping(changed)
  }
  const keepPhones = (asWritten: boolean) => {
    checking.reset()
    setPhonesAsWritten(asWritten)
  }
  const table = file && 'headings' in file.table ? file.table : null
  const lines = table?.lines ?? []
  const ready = table && lines.length > 0 && lines.length <= mostLines
  return (
    <Page title={said.title}>
      <FileChoice
        read={file?.read ?? null}
        table={file?.table ?? null}
        most={mostLines}
        onFile={chosen => take(chosen, null, null)}
        onRead={(encoding, delimiter) => file && take(file.from, encoding, delimiter)}
      />
      {ready && (
        <>
          <Columns table={table} mapping={mapping} onMap={map} />
          <Preview
            lines={lines}
            reading={{ mapping, phonesAsWritten }}
            onPhones={keepPhones}
            checking={checking}
          />
        </>
      )}
      {checking.check.state === 'done' && (
        <Checked lines={checking.check.lines} onEntered={() => setFile(null)} reset={checking.reset} />
      )}
    </Page>
  )
}
