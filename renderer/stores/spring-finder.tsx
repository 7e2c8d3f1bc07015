import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { mmOf } from '../../core/measures/measures.ts'
import { type SpringFound, type SpringWanted, springsFor } from '../../core/stores/mainspring-finder.ts'
import { problemText } from '../../core/words/problem-text.ts'
import type { ShownProblem } from '../api.ts'
import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { type Column, Entry, Ledger } from '../parts/ledger.tsx'
import { useMeasures } from '../parts/measures.tsx'
import { Page, Section } from '../parts/page.tsx'
import { sizeWords } from '../parts/part-words.ts'
import { ProblemList, Problems } from '../parts/problems.tsx'
import { useShop } from '../shop.tsx'
import { type PartRow, storesQuery } from './stores.ts'

type Found = SpringFound<PartRow>

interface Result {
  readonly found: readonly Found[] | null
  readonly problems: readonly ShownProblem[]
}

const blank = {
  barrelMm: '',
  arborMm: '',
  heightMm: '',
  hoursPerTurn: '',
  wantedDays: '8',
  oldHeight: '',
  oldThickness: '',
  oldLength: '',
}

/** From barrel, arbor, height and the days wanted: the springs on record that go in, with turns, fill and days. */
export function SpringFinder() {
  const { words } = useShop()
  const { length } = useMeasures()
  const { springs } = words.stores
  const { data } = useQuery(storesQuery)
  const entry = useEntry(blank)
  const [result, setResult] = useState<Result>({ found: null, problems: [] })
  const find = (event: FormEvent) => {
    event.preventDefault()
    const typed = (text: string) => (text.trim() ? Number(text) : Number.NaN)
    const { barrelMm, arborMm, heightMm, hoursPerTurn, wantedDays, oldHeight, oldThickness, oldLength } =
      entry.value
    const isOldKnown = [oldHeight, oldThickness, oldLength].some(text => text.trim() !== '')
    const mm = (text: string) => mmOf(typed(text), length)
    const wanted: SpringWanted = {
      barrelMm: mm(barrelMm),
      arborMm: mm(arborMm),
      heightMm: mm(heightMm),
      hoursPerTurn: typed(hoursPerTurn),
      wantedDays: typed(wantedDays),
      old: isOldKnown
        ? { height: mm(oldHeight), thickness: mm(oldThickness), length: mm(oldLength) }
        : undefined,
    }
    const parts = data?.parts.filter(part => part.kind === 'mainspring') ?? []
    const found = springsFor(wanted, parts)
    setResult(
      found.ok
        ? { found: found.value, problems: [] }
        : {
            found: null,
            problems: found.problems.map(one => ({ ...one, message: problemText(words, one) })),
          },
    )
  }
  return (
    <Page title={springs.title} subtitle={springs.advice}>
      <Section title={words.partKinds.mainspring}>
        <form className="form" noValidate onSubmit={find} aria-label={springs.title}>
          <ProblemList problems={result.problems} />
          <Problems value={result.problems}>
            <div className="fields">
              <DecimalField label={springs.barrel} unit={length} {...entry.at('barrelMm')} />
              <DecimalField label={springs.arbor} unit={length} {...entry.at('arborMm')} />
              <DecimalField label={springs.height} unit={length} {...entry.at('heightMm')} />
              <DecimalField label={springs.hoursPerTurn} unit="h" {...entry.at('hoursPerTurn')} />
              <DecimalField label={springs.wantedDays} {...entry.at('wantedDays')} />
            </div>
            <fieldset className="fields">
              <legend>{springs.old}</legend>
              <DecimalField
                label={springs.oldHeight}
                unit={length}
                {...entry.at('oldHeight')}
                name="old.height"
              />
              <DecimalField
                label={springs.oldThickness}
                unit={length}
                {...entry.at('oldThickness')}
                name="old.thickness"
              />
              <DecimalField
                label={springs.oldLength}
                unit={length}
                {...entry.at('oldLength')}
                name="old.length"
              />
            </fieldset>
          </Problems>
          <div className="buttons">
            <button type="submit">{springs.find}</button>
          </div>
        </form>
      </Section>
      {result.found && <FoundSprings found={result.found} />}
    </Page>
  )
}

const tenths = (value: number): number => Math.round(value * 10) / 10
/** Days to a hundredth: a spring a little short of the days wanted must not look as if it reached them. */
const hundredths = (value: number): number => Math.round(value * 100) / 100

function FoundSprings({ found }: { found: readonly Found[] }) {
  const { words, formats } = useShop()
  const { springs } = words.stores
  const columns: Column<Found>[] = [
    { label: words.stores.keptAt, kind: 'date', cell: ({ part }) => part.keptAt },
    { label: springs.inStock, kind: 'number', cell: ({ part }) => part.inStock },
    {
      label: springs.spring,
      kind: 'entry',
      cell: ({ part, longEnough, ofThisBarrel }) => (
        <Entry
          lead={part.name}
          rest={sizeWords(words, part.sizes)}
          second={[ofThisBarrel && springs.ofThisBarrel, longEnough ? springs.enough : springs.short]
            .filter(Boolean)
            .join(' · ')}
        />
      ),
    },
    { label: springs.turns, kind: 'figure', cell: ({ turns }) => formats.number(tenths(turns)) },
    {
      label: springs.fill,
      kind: 'figure',
      cell: ({ fillPercent }) => springs.percent(formats.number(tenths(fillPercent))),
    },
    {
      label: springs.strength,
      kind: 'figure',
      cell: ({ strengthPercent }) =>
        strengthPercent === null ? '' : springs.percent(formats.number(Math.round(strengthPercent))),
    },
    { label: springs.days, kind: 'figure', cell: ({ days }) => formats.number(hundredths(days)) },
  ]
  return (
    <div className="whole-ledger">
      <Ledger
        caption={springs.list}
        columns={columns}
        groups={[{ title: springs.list, rows: found }]}
        rowKey={({ part }) => part.id}
        empty={springs.none}
        open={({ part }) => `/stores/${part.id}`}
        plain
      />
    </div>
  )
}
