import { useQuery } from '@tanstack/react-query'
import { useEffect, useId, useRef } from 'react'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { isInShop } from '../../core/standing/stages.ts'
import { answer, api } from '../api.ts'
import { clockMarks, clockWords } from '../clock-words.ts'
import { Cautions } from '../parts/cautions.tsx'
import { Tick } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import type { Visit } from '../register/clock.ts'
import { MovementFields, SightFields } from '../register/clock-fields.tsx'
import { ComebackCover } from '../register/comeback-cover.tsx'
import { LikelyClocks } from '../register/likely-clocks.tsx'
import { useShop } from '../shop.tsx'
import { type KnownClock, newClockCautions, type TakeInEntry } from './take-in-entry.ts'

/** Which clock: the owner's known ones first, or one described here. */
export function ClockSection({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  return (
    <Section title={takeIn.clock}>
      {entry.known && <KnownClocks key={entry.known.id} entry={entry} ownerId={entry.known.id} />}
      {entry.knownClock ? (
        <Comeback entry={entry} clockId={entry.knownClock.id} />
      ) : (
        <NewClock entry={entry} />
      )}
    </Section>
  )
}

/** The owner's clocks to choose from; the choice takes the focus when the owner has been chosen. */
function KnownClocks({ entry, ownerId }: { entry: TakeInEntry; ownerId: number }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const name = useId()
  const group = useRef<HTMLFieldSetElement>(null)
  const { data } = useQuery({
    queryKey: ['owner', ownerId],
    queryFn: () => answer(api.pages.owners[':id'].$get({ param: { id: String(ownerId) } })),
  })
  const arrived = data !== undefined && entry.justChosen
  const first = data?.clocks[0]
  const choose = useRef(entry.chooseClock)
  useEffect(() => {
    if (!arrived) return
    if (first) choose.current(first)
    group.current?.querySelector('input')?.focus()
  }, [arrived, first])
  if (!data) return null
  const option = (clock: KnownClock | null, said: string) => (
    <label key={clock?.id ?? 'new'} className="tick">
      <input
        type="radio"
        name={name}
        checked={entry.knownClock?.id === clock?.id}
        onChange={() => entry.chooseClock(clock)}
      />
      <span>{said}</span>
    </label>
  )
  return (
    <fieldset ref={group} className="field">
      <legend>{takeIn.which}</legend>
      {data.clocks.map(clock =>
        option(clock, [clockWords(words, clock), clockMarks(words, clock)].filter(Boolean).join(', ')),
      )}
      {option(null, takeIn.anotherClock)}
    </fieldset>
  )
}

/** Whether the chosen clock comes back from an earlier repair, and under its warranty. */
function Comeback({ entry, clockId }: { entry: TakeInEntry; clockId: number }) {
  const { words, formats, settings } = useShop()
  const { takeIn } = words.counter
  const { data } = useQuery({
    queryKey: ['clock', clockId],
    queryFn: () => answer(api.pages.clocks[':id'].$get({ param: { id: String(clockId) } })),
  })
  const visit = data && comesBackFrom(data.visits, entry.comebackOf)
  if (!visit) return null
  const { repair, cover, warranty } = visit
  const comesBack = entry.comebackOf === repair.id
  return (
    <div>
      <Tick
        name="comebackOf"
        label={takeIn.comeback(repair.number)}
        hint={`${formats.date(civilDateOf(repair.takenInAt, settings.place.timeZone))} · ${repair.fault}`}
        value={comesBack}
        onChange={yes => (yes ? entry.comeBack(repair.id, cover?.covered) : entry.comeBack(null))}
      />
      {comesBack && (
        <ComebackCover
          number={repair.number}
          cover={cover}
          exclusions={warranty?.exclusions ?? []}
          causes={entry.causes}
          covered={entry.rest.value.covered}
          onChange={(causes, covered) => entry.comeBack(repair.id, covered, causes)}
        />
      )}
    </div>
  )
}

/** The visit a clock comes back from: the one that was said, else the last one whose warranty was given, else the last one collected. */
function comesBackFrom(visits: readonly Visit[], said: number | null): Visit | undefined {
  const collected = visits.filter(({ repair }) => !isInShop(repair.stage))
  return (
    collected.find(({ repair }) => repair.id === said) ??
    collected.find(({ warranty }) => warranty !== null) ??
    collected[0]
  )
}

function NewClock({ entry }: { entry: TakeInEntry }) {
  const { takeIn } = useShop().words.counter
  const { clock } = entry
  return (
    <div className="form">
      <div className="fields">
        <SightFields entry={clock} />
      </div>
      <LikelyClocks
        typed={clock.value}
        otherThan={entry.otherClocks}
        onOtherThan={entry.setOtherClocks}
        onSame={({ id, form, ownerId, owner }) => {
          if (ownerId === null || owner === null) entry.chooseClock({ id, form })
          else entry.chooseOwner({ id: ownerId, name: owner }, { id, form })
        }}
      />
      <More label={takeIn.details}>
        <MovementFields entry={clock} />
      </More>
      <Cautions codes={newClockCautions(entry)} />
    </div>
  )
}
