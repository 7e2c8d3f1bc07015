import { answer, api } from '../api.ts'
import { PhotographsOf } from '../condition/photograph/photographs-of.tsx'
import { useAct } from '../parts/act.tsx'
import { Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import { ProblemList } from '../parts/problems.tsx'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import { AsFound, NoteWords, photographsAsFound } from './as-found.tsx'

/** The movement as it was found, and the steps of its service with what was found shown again where it is needed. */
export function ServiceSection({ view }: { view: Repair }) {
  const { service } = useShop().words.bench
  return (
    <Section title={service.heading} note={service.note}>
      <AsFound view={view} />
      <More label={service.steps}>
        <Steps view={view} />
      </More>
    </Section>
  )
}

function Steps({ view }: { view: Repair }) {
  const { words } = useShop()
  const { service } = words.bench
  const standing = view.bench.asFound.filter(note => note.struckReason === null)
  const pictures = photographsAsFound(view).filter(picture => picture.struckReason === null)
  return (
    <ol className="steps">
      {view.bench.steps.map(step => (
        <li key={step.code}>
          <StepTick repairId={view.repair.id} step={step} />
          {step.cautions.map(caution => (
            <p key={caution} className="note">
              {words.stepCautions[caution]}
            </p>
          ))}
          {step.code !== 'as-found' && (
            <ul className="found-again">
              {standing
                .filter(note => step.marks.includes(note.mark))
                .map(note => (
                  <li key={note.id}>
                    <NoteWords note={note} />
                  </li>
                ))}
            </ul>
          )}
          {step.code === 'assemble' && <PhotographsOf what={service.asFound} photographs={pictures} />}
        </li>
      ))}
      <li className="local-codes">{words.screens.caution.defer}</li>
    </ol>
  )
}

type Step = Repair['bench']['steps'][number]

/** What to do, ticked when it is done, with who and when. */
function StepTick({ repairId, step: { code, done } }: { repairId: number; step: Step }) {
  const { words, formats } = useShop()
  const { service, steps } = words.bench
  const act = useAct(
    (ticked: boolean) => answer(api.bench.tickStep.$post({ json: { repairId, step: code, done: ticked } })),
    { said: ({ done: ticked }) => (ticked ? service.ticked : service.unticked) },
  )
  return (
    <>
      <label className="step-tick">
        <input
          type="checkbox"
          checked={done !== null}
          disabled={act.busy}
          onChange={event => act.run(event.target.checked)}
        />
        <span>{steps[code]}</span>
      </label>
      {done && <small className="quiet">{service.doneBy(done.person ?? '', formats.instant(done.at))}</small>}
      <ProblemList problems={act.problems} />
    </>
  )
}
