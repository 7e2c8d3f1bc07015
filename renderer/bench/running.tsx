import { Link } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Section } from '../parts/page.tsx'
import { TimeField } from '../parts/time-field.tsx'
import { timeWords } from '../parts/time-words.ts'
import { orNull } from '../parts/typed.ts'
import { useShop } from '../shop.tsx'
import type { Running } from './bench.ts'

/** True for the labour clock of whoever is named at the top of the page. */
export function useIsMine(): (running: Pick<Running, 'personId'>) => boolean {
  const { person } = useShop()
  return ({ personId }) => (personId === null ? '' : String(personId)) === person
}

/** Every labour clock that runs; one's own can be stopped, a forgotten one is asked about. */
export function RunningClocks({ running }: { running: readonly Running[] }) {
  const { bench } = useShop().words
  if (running.length === 0) return null
  return (
    <Section title={bench.running.heading}>
      {running.map(one => (
        <RunningClock key={one.id} one={one} />
      ))}
    </Section>
  )
}

function RunningClock({ one }: { one: Running }) {
  const { words, formats } = useShop()
  const { running: said } = words.bench
  const mine = useIsMine()(one)
  return (
    <div className="running">
      <p>
        <Link href={`/bench/${one.number}`}>{said.line(one.number, words.tasks[one.task])}</Link>{' '}
        <small className="quiet">
          {one.person ?? said.nobody},{' '}
          {said.since(formats.instant(one.startedAt), timeWords(words, one.minutes))}
        </small>
      </p>
      {mine ? <StopClock one={one} /> : <p className="quiet">{said.otherPerson}</p>}
    </div>
  )
}

/** Stops one's labour clock; asks when the work ended where it was left running from another day. */
export function StopClock({ one }: { one: Pick<Running, 'number' | 'forgotten'> }) {
  const { words } = useShop()
  const { running: said } = words.bench
  const entry = useEntry({ endedAt: '' })
  const act = useAct(
    (input: { endedAt: string | null }) => answer(api.bench.stopLabour.$post({ json: input })),
    { said: ({ minutes }) => said.stopped(one.number, timeWords(words, minutes)) },
  )
  return (
    <ActForm
      act={act}
      input={() => ({ endedAt: orNull(entry.value.endedAt) })}
      className="form stop"
      label={said.stop}
    >
      {one.forgotten && (
        <>
          <p>{said.forgotten}</p>
          <TimeField label={said.endedAt} hint={said.endedHint} {...entry.at('endedAt')} />
        </>
      )}
      <Send act={act}>{one.forgotten ? said.stopThen : said.stop}</Send>
    </ActForm>
  )
}
