import { useState } from 'react'
import { type ClockToPlace, misfits } from '../../core/run-in/place-fit.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField } from '../parts/field.tsx'
import { BoxFields, useMeasures } from '../parts/measures.tsx'
import { More } from '../parts/pane.tsx'
import { useShop } from '../shop.tsx'
import type { RunView, Shelf } from './shelf.ts'

type Place = Shelf['places'][number]

/** What speaks against the place chosen for a clock, and the room there: advice, never a refusal. */
export function FitHint({ clock, place }: { clock: RunView['clock']; place: Place | undefined }) {
  const { fit } = useShop().words.shelf
  const { saidBox, saidWeight } = useMeasures()
  if (!place) return null
  const against = misfits(clock, place)
  const room = [saidBox(place), place.bearsG !== null && fit.bears(saidWeight(place.bearsG))]
  const size = [saidBox(clock), saidWeight(clock.weightG)]
  const listed = (parts: readonly (string | false)[]) => parts.filter(Boolean).join(', ')
  return (
    <div role="status" className="fit-hint">
      {against.length > 0 && (
        <p className="note">
          {fit.advice} {against.map(one => fit.misfits[one]).join(' ')}
        </p>
      )}
      {listed(room) && <p className="quiet">{fit.room(listed(room))}</p>}
      {listed(size) && <p className="quiet">{fit.clock(listed(size))}</p>}
    </div>
  )
}

/** The free places to choose from for a clock, those that may not suit it named so, and the first that may. */
export function useFreePlaces(clock: ClockToPlace, places: Shelf['places']) {
  const { fit } = useShop().words.shelf
  const suits = (place: Place) => misfits(clock, place).length === 0
  const free = places.filter(place => place.number === null)
  return {
    free,
    first: String((free.find(suits) ?? free[0])?.id ?? ''),
    choices: Object.fromEntries(
      free.map(place => [String(place.id), suits(place) ? place.name : fit.mayNotSuit(place.name)]),
    ),
  }
}

/** Says of a place what fits there. */
export function DescribePlaces({ places }: { places: Shelf['places'] }) {
  const { fit } = useShop().words.shelf
  const first = places[0]
  if (!first) return null
  return (
    <More label={fit.open}>
      <DescribeForm places={places} first={first} />
    </More>
  )
}

/** What fits at a place, as it is on record. */
const roomOf = ({ heightMm, widthMm, depthMm, bearsG, weightsHang }: Place) => ({
  heightMm,
  widthMm,
  depthMm,
  bearsG,
  weightsHang,
})

function DescribeForm({ places, first }: { places: Shelf['places']; first: Place }) {
  const { fit } = useShop().words.shelf
  const { typedBox, typedWeight, writtenBox, writtenWeight, weight } = useMeasures()
  const placeTyped = (place: Place) => ({
    placeId: String(place.id),
    ...typedBox(place),
    bearsG: typedWeight(place.bearsG),
    weightsHang: place.weightsHang === null ? '' : place.weightsHang ? 'yes' : 'no',
  })
  const entry = useEntry(placeTyped(first))
  const [seen, setSeen] = useState(first)
  const { placeId, bearsG, weightsHang } = entry.value
  const act = useAct(
    (input: Parameters<typeof api.shelf.describePlace.$post>[0]['json']) =>
      answer(api.shelf.describePlace.$post({ json: input })),
    {
      said: ({ name }) => fit.said(name),
      after: (_, { seen: __, placeId: ___, ...room }) => setSeen({ ...seen, ...room } as Place),
    },
  )
  const input = () => ({
    placeId: Number(placeId),
    ...writtenBox(entry.value),
    bearsG: writtenWeight(bearsG),
    weightsHang: weightsHang === '' ? null : weightsHang === 'yes',
    seen: roomOf(seen),
  })
  const choose = (id: string) => {
    const place = places.find(one => String(one.id) === id)
    if (place) {
      entry.set(placeTyped(place))
      setSeen(place)
    }
  }
  const choices = Object.fromEntries(places.map(place => [String(place.id), place.name]))
  return (
    <ActForm act={act} input={input} label={fit.open}>
      <div className="fields">
        <Choice label={fit.place} name="placeId" choices={choices} value={placeId} onChange={choose} />
        <BoxFields entry={entry} />
        <DecimalField label={fit.load} unit={weight} {...entry.at('bearsG')} />
        <Choice
          label={fit.weights}
          choices={fit.weightsHang}
          empty={fit.unsaid}
          {...entry.at('weightsHang')}
        />
      </div>
      <div className="buttons">
        <Send act={act}>{fit.send}</Send>
      </div>
    </ActForm>
  )
}
