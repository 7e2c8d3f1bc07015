import { importedRow } from '../../../core/import/rows.ts'
import { problemText } from '../../../core/words/problem-text.ts'
import { Tick } from '../../parts/field.tsx'
import { Ledger } from '../../parts/ledger.tsx'
import { Section } from '../../parts/page.tsx'
import { useShop } from '../../shop.tsx'
import type { FileLine } from './read-file.ts'
import { ClockWords, OwnerWords } from './row-words.tsx'
import type { Reading, useCheck } from './use-check.ts'

interface PreviewProps {
  readonly lines: readonly FileLine[]
  readonly reading: Reading
  readonly onPhones: (asWritten: boolean) => void
  readonly checking: ReturnType<typeof useCheck>
}

const shown = 5

/** The first lines as they would be entered, and the check of all of them: how far it is, and a way to stop it. */
export function Preview({ lines, reading, onPhones, checking }: PreviewProps) {
  const { mapping, phonesAsWritten } = reading
  const { words } = useShop()
  const { listImport: said } = words
  const rows = lines
    .slice(0, shown)
    .map(({ line, cells }) => ({ line, read: importedRow(cells, line, mapping, words) }))
  const named = mapping.includes('name')
  return (
    <Section title={said.preview}>
      <Ledger
        plain
        caption={said.preview}
        groups={[{ title: '', rows }]}
        rowKey={row => row.line}
        empty={said.empty}
        columns={[
          { label: said.line, kind: 'text', cell: row => row.line },
          {
            label: said.owner,
            kind: 'entry',
            cell: ({ read }) =>
              read.ok ? (
                <OwnerWords owner={read.value.owner} />
              ) : (
                <span className="late">{read.problems.map(one => problemText(words, one)).join(' ')}</span>
              ),
          },
          {
            label: said.clock,
            kind: 'text',
            cell: ({ read }) => read.ok && <ClockWords clock={read.value.clock} />,
          },
        ]}
      />
      {named ? (
        <>
          {mapping.includes('phone') && (
            <Tick name="phones" label={said.phonesAsWritten} value={phonesAsWritten} onChange={onPhones} />
          )}
          <Progress checking={checking} onCheck={() => checking.start(lines, reading)} />
        </>
      ) : (
        <p className="late">{said.noName}</p>
      )}
    </Section>
  )
}

/** One button that begins and stops the check, so that the cursor keeps its place, and how far the check is. */
function Progress({ checking, onCheck }: { checking: PreviewProps['checking']; onCheck: () => void }) {
  const { listImport: said } = useShop().words
  const { check, stop } = checking
  const running = check.state === 'running'
  return (
    <div className="import-progress">
      <button type="button" className="second" onClick={running ? stop : onCheck}>
        {running ? said.stop : said.check}
      </button>
      {running && (
        <label>
          <progress max={check.of} value={check.done} /> {said.checking(check.done, check.of)}
        </label>
      )}
      <p role="status">{check.state === 'stopped' && said.stopped}</p>
    </div>
  )
}
