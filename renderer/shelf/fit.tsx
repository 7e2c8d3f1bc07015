import { misfits } from '../../core/run-in/place-fit.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DecimalField } from '../parts/field.tsx'
import { More } from '../parts/pane.tsx'
import { numberOrNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { RunView, Shelf } from './shelf.ts'

type Place = Shelf['places'][number]

/** What speaks against the place chosen for a clock, and the room there: advice, never a refusal. */
export function FitHint({ clock, place }: { clock: RunView['clock']; place: Place | undefined }) {
  const { fit } = useShop().words.shelf
  if (!place) return null
  const against = misfits(clock, place)
  const room = (['heightMm', 'widthMm', 'depthMm'] as const).flatMap(side =>
    place[side] === null ? [] : [`${place[side]} ${fit.side[side]}`],
  )
  return (
    <div role="status" className="fit-hint">
      {against.length > 0 && (
        <p className="note">
          {fit.advice} {against.map(one => fit.misfits[one]).join(' ')}
        </p>
      )}
      {room.length > 0 && <p className="quiet">{fit.room(room.join(' × '))}</p>}
    </div>
  )
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

const typed = (size: number | null): string => (size === null ? '' : String(size))

/** What is on record of a place as it would be typed. */
const placeTyped = (place: Place) => ({
  placeId: String(place.id),
  heightMm: typed(place.heightMm),
  widthMm: typed(place.widthMm),
  depthMm: typed(place.depthMm),
  weightsHang: place.weightsHang === null ? '' : place.weightsHang ? 'yes' : 'no',
})

function DescribeForm({ places, first }: { places: Shelf['places']; first: Place }) {
  const { fit } = useShop().words.shelf
  const entry = useEntry(placeTyped(first))
  const { placeId, heightMm, widthMm, depthMm, weightsHang } = entry.value
  const act = useAct(
    (input: Parameters<typeof api.shelf.describePlace.$post>[0]['json']) =>
      answer(api.shelf.describePlace.$post({ json: input })),
    { said: ({ name }) => fit.said(name) },
  )
  const input = () => ({
    placeId: Number(placeId),
    heightMm: numberOrNull(heightMm),
    widthMm: numberOrNull(widthMm),
    depthMm: numberOrNull(depthMm),
    weightsHang: weightsHang === '' ? null : weightsHang === 'yes',
  })
  const choose = (id: string) => {
    const place = places.find(one => String(one.id) === id)
    if (place) entry.set(placeTyped(place))
  }
  const choices = Object.fromEntries(places.map(place => [String(place.id), place.name]))
  return (
    <ActForm act={act} input={input} label={fit.open}>
      <div className="fields">
        <Choice label={fit.place} name="placeId" choices={choices} value={placeId} onChange={choose} />
        <DecimalField label={fit.height} unit="mm" {...entry.at('heightMm')} />
        <DecimalField label={fit.width} unit="mm" {...entry.at('widthMm')} />
        <DecimalField label={fit.depth} unit="mm" {...entry.at('depthMm')} />
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
