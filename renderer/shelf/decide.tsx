import { useState } from 'react'
import { answer, api } from '../api.ts'
import { type Act, ActForm, Send, useAct, useAskedAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, TextField } from '../parts/field.tsx'
import { workingPlace } from '../parts/paper-link.tsx'
import { MeasureHere } from '../register/measure-clock.tsx'
import { useShop } from '../shop.tsx'
import { FitHint, useFreePlaces } from './fit.tsx'
import type { RunView, Shelf } from './shelf.ts'

type Decision = 'pass' | 'restart' | 'toBench' | 'move'

interface DecideProps {
  readonly view: RunView
  readonly places: Shelf['places']
}

/** The four things that may come of a run, each with its form below the buttons. */
export function Decide(props: DecideProps) {
  const { decide } = useShop().words.shelf
  const [open, setOpen] = useState<Decision | null>(null)
  if (props.view.run.endedAt) return null
  const mayPass = props.view.run.figures.verdict === 'may-pass'
  const names: Record<Decision, string> = {
    pass: mayPass ? decide.pass : decide.passAll,
    restart: decide.restart,
    toBench: decide.toBench,
    move: decide.move,
  }
  const close = () => setOpen(null)
  return (
    <section className="decide" aria-label={decide.heading}>
      <div className="buttons">
        {(Object.keys(names) as Decision[]).map(decision => (
          <button
            key={decision}
            type="button"
            className={decision === 'pass' && mayPass ? '' : 'second'}
            aria-expanded={open === decision}
            onClick={() => setOpen(open === decision ? null : decision)}
          >
            {names[decision]}
          </button>
        ))}
      </div>
      {open === 'pass' && <Pass {...props} close={close} mayPass={mayPass} />}
      {open === 'restart' && <Restart {...props} close={close} />}
      {open === 'toBench' && <ToBench {...props} close={close} />}
      {open === 'move' && <Move {...props} close={close} />}
    </section>
  )
}

interface FormProps extends DecideProps {
  readonly close: () => void
}

interface Reasoned {
  readonly runId: number
  readonly reason: string
}

/** A decision that needs one sentence. */
function ReasonForm(props: {
  act: Act<Reasoned>
  runId: number
  label: string
  send: string
  close: () => void
}) {
  const { act, runId, label, send, close } = props
  const { screens } = useShop().words
  const entry = useEntry({ reason: '' })
  return (
    <ActForm act={act} input={() => ({ runId, ...entry.value })} label={send} focusFirst>
      <TextField label={label} {...entry.at('reason')} />
      <div className="buttons">
        <Send act={act}>{send}</Send>
        <button type="button" className="second" onClick={close}>
          {screens.form.no}
        </button>
      </div>
    </ActForm>
  )
}

function Pass({ view, close, mayPass }: FormProps & { mayPass: boolean }) {
  const { shelf, papers } = useShop().words
  const { decide } = shelf
  const { number } = view.repair
  const send = mayPass ? decide.pass : decide.passAll
  const seen = { verdict: view.run.figures.verdict }
  const act = useAskedAct(
    (ledger, input: Reasoned) => answer(ledger.shelf.pass.$post({ json: { ...input, seen } })),
    {
      said: () => decide.passSaid(number),
      papers: (_, { runId }) => [
        { place: workingPlace('run-in-certificate', runId), title: papers.titles['run-in-certificate'] },
      ],
      confirm: () => ({ title: decide.passTitle(number), body: <p>{decide.passBody}</p>, yesWords: send }),
      after: close,
    },
  )
  const label = mayPass ? decide.reason : decide.passReason
  return <ReasonForm act={act} runId={view.run.id} label={label} send={send} close={close} />
}

function Restart({ view, close }: FormProps) {
  const { decide } = useShop().words.shelf
  const act = useAct((input: Reasoned) => answer(api.shelf.restart.$post({ json: input })), {
    said: () => decide.restartSaid(view.repair.number),
    after: close,
  })
  return (
    <ReasonForm
      act={act}
      runId={view.run.id}
      label={decide.restartReason}
      send={decide.restart}
      close={close}
    />
  )
}

function ToBench({ view, close }: FormProps) {
  const { decide } = useShop().words.shelf
  const act = useAct((input: Reasoned) => answer(api.shelf.toBench.$post({ json: input })), {
    said: () => decide.toBenchSaid(view.repair.number),
    after: close,
  })
  return (
    <ReasonForm
      act={act}
      runId={view.run.id}
      label={decide.toBenchReason}
      send={decide.toBench}
      close={close}
    />
  )
}

function Move({ view, places, close }: FormProps) {
  const { screens, shelf } = useShop().words
  const { decide } = shelf
  const { free, first, choices } = useFreePlaces(view.clock, places)
  const entry = useEntry({ placeId: first })
  const place = free.find(one => String(one.id) === entry.value.placeId)
  const act = useAct(
    (input: { runId: number; placeId: number }) => answer(api.shelf.move.$post({ json: input })),
    {
      said: () => decide.moveSaid(view.repair.number, place?.name ?? ''),
      after: close,
    },
  )
  if (free.length === 0) return <p className="quiet">{decide.noFree}</p>
  return (
    <>
      <ActForm
        act={act}
        input={() => ({ runId: view.run.id, placeId: Number(entry.value.placeId) })}
        label={decide.move}
        focusFirst
      >
        <Choice label={decide.moveTo} choices={choices} {...entry.at('placeId')} />
        <FitHint clock={view.clock} place={place} />
        <div className="buttons">
          <Send act={act}>{decide.move}</Send>
          <button type="button" className="second" onClick={close}>
            {screens.form.no}
          </button>
        </div>
      </ActForm>
      <MeasureHere clock={view.clock} />
    </>
  )
}
