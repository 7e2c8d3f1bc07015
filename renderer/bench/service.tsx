import { PhotographsOf } from '../condition/photograph/photographs-of.tsx'
import { Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
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
  const { service, steps } = words.bench
  const standing = view.bench.asFound.filter(note => note.struckReason === null)
  const pictures = photographsAsFound(view).filter(picture => picture.struckReason === null)
  return (
    <ol className="steps">
      {view.bench.steps.map(step => (
        <li key={step.code}>
          {steps[step.code]}
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
    </ol>
  )
}
