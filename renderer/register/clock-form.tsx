import { useState } from 'react'
import { useLocation } from 'wouter'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { type EntryState, useEntry } from '../parts/entry.ts'
import { TextArea } from '../parts/field.tsx'
import { useSeen } from '../parts/seen.ts'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { ClockProps } from './clock.ts'
import {
  describedClock,
  MovementFields,
  SightFields,
  type TypedClock,
  typedClock,
  unseenClock,
} from './clock-fields.tsx'
import { LikelyClocks } from './likely-clocks.tsx'
import type { OwnerProps } from './owner.ts'

const newClock = { ...unseenClock('mantel'), notes: '' }

/** Enters a clock under this owner without taking it in. */
export function AddClock({ view: { owner }, close }: OwnerProps) {
  const { clockForm } = useShop().words.register
  const [, navigate] = useLocation()
  const entry = useEntry(newClock)
  const [otherThan, setOtherThan] = useState<readonly number[]>([])
  const act = useAct(
    (json: Parameters<typeof api.register.addClock.$post>[0]['json']) =>
      answer(api.register.addClock.$post({ json })),
    { said: () => clockForm.entered, after: close },
  )
  return (
    <ActPanel
      title={clockForm.newTitle}
      act={act}
      input={() => ({ ownerId: owner.id, ...describedClock(entry.value), otherThan: [...otherThan] })}
      send={clockForm.enter}
      close={close}
    >
      <ClockFields entry={entry} />
      <LikelyClocks
        typed={entry.value}
        otherThan={otherThan}
        onOtherThan={setOtherThan}
        onSame={({ id }) => navigate(`/register/clock/${id}`)}
      />
    </ActPanel>
  )
}

/** Changes how a clock is described. */
export function ChangeClock({ view: { clock }, close }: ClockProps) {
  const { clockForm } = useShop().words.register
  const now = typedClock(clock)
  const entry = useEntry(now)
  const act = useAct(
    (json: Parameters<typeof api.register.changeClock.$post>[0]['json']) =>
      answer(api.register.changeClock.$post({ json })),
    { said: () => clockForm.changed, after: close },
  )
  const seen = useSeen(entry, now, act.problems)
  return (
    <ActPanel
      title={clockForm.changeTitle}
      act={act}
      input={() => ({ clockId: clock.id, ...describedClock(entry.value), seen: describedClock(seen) })}
      send={clockForm.change}
      close={close}
    >
      <ClockFields entry={entry} />
    </ActPanel>
  )
}

/** Everything that tells a clock from another. */
function ClockFields({ entry }: { entry: EntryState<TypedClock & { readonly notes: string }> }) {
  const { clockForm } = useShop().words.register
  return (
    <>
      <div className="fields">
        <SightFields entry={entry} />
      </div>
      <MovementFields entry={entry} />
      <TextArea label={clockForm.notes} {...entry.at('notes')} />
    </>
  )
}
