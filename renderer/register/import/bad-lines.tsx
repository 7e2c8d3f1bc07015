import type { ShownProblem } from '../../api.ts'
import { Ledger } from '../../parts/ledger.tsx'
import { useShop } from '../../shop.tsx'
import type { BadLine } from './found.ts'

const shown = 200

/** The field of a problem in the words of the columns; what has none stands for the whole line. */
function useFieldWords() {
  const { fields } = useShop().words.listImport
  const byPath: Readonly<Record<string, string>> = {
    'owner.name': fields.name,
    'owner.address': fields.address,
    'owner.country': fields.country,
    'owner.notes': fields.notes,
    'owner.contacts': `${fields.phone}, ${fields['e-mail']}`,
    'clock.form': fields.form,
    'clock.maker': fields.maker,
    'clock.serial': fields.serial,
    'clock.marks': fields.marks,
    'clock.trains': fields.trains,
    'clock.dial': fields.dial,
    'clock.notes': fields.clockNotes,
  }
  return ({ field, code }: ShownProblem) => {
    if (code === 'input.notAPhone') return fields.phone
    if (code === 'input.notAnEmail') return fields['e-mail']
    return byPath[field.replace(/\[.*$/, '')] ?? ''
  }
}

/** Every line that cannot be entered, with the field and the reason. */
export function BadLines({ lines }: { lines: readonly BadLine[] }) {
  const { listImport: said } = useShop().words
  const fieldWords = useFieldWords()
  const rows = lines
    .slice(0, shown)
    .flatMap(({ line, problems }) => problems.map((problem, i) => ({ key: `${line} ${i}`, line, problem })))
  return (
    <>
      <h3>{said.badTitle(lines.length)}</h3>
      <Ledger
        plain
        caption={said.bad}
        groups={[{ title: '', rows }]}
        rowKey={row => row.key}
        empty=""
        columns={[
          { label: said.line, kind: 'text', cell: row => row.line },
          { label: said.field, kind: 'text', cell: row => fieldWords(row.problem) },
          { label: said.reason, kind: 'entry', cell: row => row.problem.message },
        ]}
      />
      {lines.length > shown && <p>{said.andMore(lines.length - shown)}</p>}
      <p className="quiet">{said.badHint}</p>
    </>
  )
}
