import type { PlaceKind } from '../../core/vocabulary/work.ts'
import { answer, api } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../parts/field.tsx'
import { Pane } from '../parts/pane.tsx'
import { TimeField } from '../parts/time-field.tsx'
import { orNull } from '../parts/typed.ts'
import { MeasureHere } from '../register/measure-clock.tsx'
import { useShop } from '../shop.tsx'
import { FitHint, useFreePlaces } from './fit.tsx'
import type { Shelf, Startable } from './shelf.ts'

interface Begin {
  readonly repairId: number
  readonly placeId: number
  readonly start: string | null
  readonly error: string | null
  readonly limitPerDay: string | null
  readonly steadyWithin: string | null
}

/** Puts a clock whose work is done on the shelf. */
export function StartPane({ row, places }: { row: Startable; places: Shelf['places'] }) {
  const { words } = useShop()
  const { start } = words.shelf
  const isFree = places.some(place => place.number === null)
  return (
    <Pane title={start.heading(row.number)}>
      <p className="quiet">
        {clockWords(words, row.clock)} · {row.owner.name}
      </p>
      {isFree ? <StartForm row={row} places={places} /> : <AddPlace />}
      <MeasureHere clock={row.clock} />
    </Pane>
  )
}

function StartForm({ row, places }: { row: Startable; places: Shelf['places'] }) {
  const { words, formats } = useShop()
  const { start } = words.shelf
  const { free, first, choices } = useFreePlaces(row.clock, places)
  const entry = useEntry({
    placeId: first,
    start: '',
    error: '0',
    limitPerDay: row.limits.perDay,
    steadyWithin: row.limits.steady,
  })
  const act = useAct((input: Begin) => answer(api.shelf.startRunIn.$post({ json: input })), {
    said: ({ readyOn }) => start.said(row.number, formats.date(readyOn)),
  })
  const input = (): Begin => ({
    repairId: row.repairId,
    placeId: Number(entry.value.placeId),
    start: orNull(entry.value.start),
    error: orNull(entry.value.error),
    limitPerDay: orNull(entry.value.limitPerDay),
    steadyWithin: orNull(entry.value.steadyWithin),
  })
  return (
    <ActForm act={act} input={input} label={start.heading(row.number)}>
      <p>{start.advice}</p>
      <div className="fields">
        <Choice label={start.place} choices={choices} {...entry.at('placeId')} />
        <TextField label={start.error} hint={start.errorHint} {...entry.at('error')} />
        <DecimalField
          label={start.limit}
          unit={start.limitUnit}
          hint={start.limitHint}
          {...entry.at('limitPerDay')}
        />
        <DecimalField
          label={start.steady}
          unit={start.limitUnit}
          hint={start.steadyHint}
          {...entry.at('steadyWithin')}
        />
        <TimeField label={start.at} hint={start.atHint} {...entry.at('start')} />
      </div>
      <FitHint clock={row.clock} place={free.find(place => String(place.id) === entry.value.placeId)} />
      <div className="buttons">
        <Send act={act}>{start.send}</Send>
      </div>
    </ActForm>
  )
}

function AddPlace() {
  const { words } = useShop()
  const { start } = words.shelf
  const entry = useEntry({ name: '', kind: 'shelf' as PlaceKind })
  const act = useAct(
    (input: { name: string; kind: PlaceKind }) => answer(api.shop.addPlace.$post({ json: input })),
    { said: (_, { name }) => start.placeSaid(name), after: () => entry.reset() },
  )
  return (
    <ActForm act={act} input={() => entry.value} label={start.addPlace}>
      <p>{start.noFree}</p>
      <div className="fields">
        <TextField label={start.placeName} {...entry.at('name')} />
        <Choice label={start.placeKind} choices={words.placeKinds} {...entry.at('kind')} />
      </div>
      <div className="buttons">
        <Send act={act}>{start.addPlace}</Send>
      </div>
    </ActForm>
  )
}
