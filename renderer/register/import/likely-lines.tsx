import { Choice } from '../../parts/field.tsx'
import { Ledger } from '../../parts/ledger.tsx'
import { useShop } from '../../shop.tsx'
import { type GoodLine, type Taken, takenFor } from './found.ts'
import { OwnerWords } from './row-words.tsx'

const shown = 100

interface LikelyProps {
  readonly lines: readonly GoodLine[]
  readonly taken: Taken
  readonly onTake: (taken: Taken) => void
}

/** Lines whose owner may be on record already, each with whom it is taken for. */
export function LikelyLines({ lines, taken, onTake }: LikelyProps) {
  const { listImport: said } = useShop().words
  const choices = ({ standing }: GoodLine) => ({
    '': said.somebodyElse,
    ...Object.fromEntries(standing.likely.map(one => [`${one.id}`, said.samePerson(one.name)])),
  })
  const whys = ({ standing }: GoodLine) =>
    standing.likely.map(one => `${one.name}: ${said.why[one.why]}`).join(' · ')
  return (
    <>
      <h3>{said.likelyTitle(lines.length)}</h3>
      <Ledger
        plain
        caption={said.likely}
        groups={[{ title: '', rows: lines.slice(0, shown) }]}
        rowKey={line => line.line}
        empty=""
        columns={[
          { label: said.line, kind: 'text', cell: line => line.line },
          { label: said.inFile, kind: 'entry', cell: line => <OwnerWords owner={line.row.owner} /> },
          { label: said.onRecord, kind: 'text', cell: whys },
          {
            label: said.takeAs,
            kind: 'text',
            cell: line => (
              <Choice
                name={`taken[${line.line}]`}
                label={said.takeAsOf(line.line)}
                hideLabel
                choices={choices(line)}
                value={String(takenFor(line, taken) ?? '')}
                onChange={(id: string) => onTake({ ...taken, [line.line]: id === '' ? null : Number(id) })}
              />
            ),
          },
        ]}
      />
      {lines.length > shown && <p>{said.likelyMore(lines.length - shown)}</p>}
    </>
  )
}
