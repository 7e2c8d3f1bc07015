import { useState } from 'react'
import { useLocation } from 'wouter'
import { type Form, forms } from '../../core/vocabulary/clock.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { type EntryState, useEntry } from '../parts/entry.ts'
import { Choice, TextArea, TextField, Tick } from '../parts/field.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { ClockProps, ClockView } from './clock.ts'
import { LikelyClocks } from './likely-clocks.tsx'
import type { OwnerProps } from './owner.ts'

type Clock = Omit<ClockView['clock'], 'id' | 'trains' | 'beatsPerHour'> & {
  /** As typed. */
  readonly trains: string
  readonly beatsPerHour: string
}

const ofForm = (form: Form) => ({
  form,
  trains: String(forms[form].trains),
  power: forms[form].power,
  duration: forms[form].duration,
})

const newClock: Clock = {
  ...ofForm('mantel'),
  maker: '',
  serial: '',
  marks: '',
  escapement: 'other',
  strike: 'none',
  chime: 'none',
  chimeCorrects: false,
  beatsPerHour: '',
  dial: 'other',
  jewelled: false,
  luminous: false,
  mercury: false,
  mains: false,
  notes: '',
}

const typed = ({ id: _, trains, beatsPerHour, ...clock }: ClockView['clock']): Clock => ({
  ...clock,
  trains: String(trains),
  beatsPerHour: beatsPerHour === null ? '' : String(beatsPerHour),
})

const described = ({ trains, beatsPerHour, ...clock }: Clock) => ({
  ...clock,
  trains: Number(trains),
  beatsPerHour: beatsPerHour.trim() ? Number(beatsPerHour) : null,
})

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
      input={() => ({ ownerId: owner.id, ...described(entry.value), otherThan: [...otherThan] })}
      send={clockForm.enter}
      close={close}
    >
      <ClockFields entry={entry} onForm={form => entry.set(ofForm(form))} />
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
  const entry = useEntry(typed(clock))
  const act = useAct(
    (json: Parameters<typeof api.register.changeClock.$post>[0]['json']) =>
      answer(api.register.changeClock.$post({ json })),
    { said: () => clockForm.changed, after: close },
  )
  return (
    <ActPanel
      title={clockForm.changeTitle}
      act={act}
      input={() => ({ clockId: clock.id, ...described(entry.value) })}
      send={clockForm.change}
      close={close}
    >
      <ClockFields entry={entry} onForm={form => entry.set({ form })} />
    </ActPanel>
  )
}

/** Everything that tells a clock from another. */
function ClockFields({ entry, onForm }: { entry: EntryState<Clock>; onForm: (form: Form) => void }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const trains = Object.fromEntries([1, 2, 3].map(count => [count, words.papers.trains(count)]))
  return (
    <>
      <div className="fields">
        <Choice label={takeIn.form} choices={words.forms} {...entry.at('form')} onChange={onForm} />
        <Choice label={takeIn.dial} choices={words.dials} {...entry.at('dial')} />
        <TextField label={takeIn.maker} {...entry.at('maker')} />
        <TextField label={takeIn.serial} {...entry.at('serial')} />
        <TextField label={takeIn.marks} wide {...entry.at('marks')} />
      </div>
      <div className="fields">
        <Choice label={takeIn.trains} choices={trains} {...entry.at('trains')} />
        <Choice label={takeIn.power} choices={words.powers} {...entry.at('power')} />
        <Choice label={takeIn.duration} choices={words.durations} {...entry.at('duration')} />
        <Choice label={takeIn.escapement} choices={words.escapements} {...entry.at('escapement')} />
        <Choice label={takeIn.strike} choices={words.strikes} {...entry.at('strike')} />
        <Choice label={takeIn.chime} choices={words.chimes} {...entry.at('chime')} />
        <TextField label={takeIn.beatsPerHour} inputMode="numeric" {...entry.at('beatsPerHour')} />
      </div>
      <div className="choices">
        <Tick label={takeIn.chimeCorrects} {...entry.at('chimeCorrects')} />
        <Tick label={takeIn.jewelled} {...entry.at('jewelled')} />
        <Tick label={takeIn.luminous} {...entry.at('luminous')} />
        <Tick label={takeIn.mercury} {...entry.at('mercury')} />
        <Tick label={takeIn.mains} {...entry.at('mains')} />
      </div>
      <TextArea label={words.register.clockForm.notes} {...entry.at('notes')} />
    </>
  )
}
