import { useState } from 'react'
import { type RunInPolicy, runInDefaults } from '../../core/run-in/policy.ts'
import { type Duration, durations } from '../../core/vocabulary/clock.ts'
import { type LinesState, useLines } from '../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../parts/field.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'

/** A stage as typed: so many winds or so many days. */
interface TypedStage {
  readonly name: string
  readonly length: string
  readonly unit: 'winds' | 'days'
}

const blank: TypedStage = { name: '', length: '', unit: 'winds' }
const isBlank = ({ name, length }: TypedStage) => name.trim() === '' && length.trim() === ''

const typedStage = ({ name, winds, days }: RunInPolicy['stages'][number]): TypedStage =>
  winds === undefined
    ? { name, length: String(days ?? ''), unit: 'days' }
    : { name, length: String(winds), unit: 'winds' }

const keptStage = ({ name, length, unit }: TypedStage) => ({ name, [unit]: Number(length) })

/** The shop's own policy for each kind of movement, a form for each. */
export function RunIn() {
  const { runIn } = useShop().words.shop
  return (
    <>
      <p className="shop-intro">{runIn.intro}</p>
      {durations.map(duration => (
        <Policy key={duration} duration={duration} />
      ))}
    </>
  )
}

function Policy({ duration }: { duration: Duration }) {
  const { settings, words } = useShop()
  const { runIn: said } = words.shop
  const path = `runIn.${duration}`
  const name = words.durations[duration]
  const stages = useLines(`${path}.stages`, blank, isBlank, settings.runIn[duration].stages.map(typedStage))
  const [every, setEvery] = useState(String(settings.runIn[duration].readingEveryDays))
  const act = useChange(said.saved(name))
  const input = () => {
    const policy = { stages: stages.written().map(keptStage), readingEveryDays: Number(every) }
    return { runIn: { ...others(settings.runIn), [duration]: policy } }
  }
  return (
    <section className="policy" aria-label={said.movement(name)}>
      <h2>{said.movement(name)}</h2>
      <p className="quiet">{said.sources[runInDefaults[duration].source]}</p>
      <SettingsForm label={said.movement(name)} act={act} input={input} save={said.save(name)}>
        <div className="stages">
          {stages.lines.map(({ key, blank: last }, index) => (
            <StageLine key={key} stages={stages} index={index} last={last} path={path} />
          ))}
        </div>
        <div className="fields">
          <DecimalField
            name={`${path}.readingEveryDays`}
            label={said.readingEveryDays}
            unit={said.days}
            value={every}
            onChange={setEvery}
          />
        </div>
      </SettingsForm>
    </section>
  )
}

/** Every policy as it is sent: a copy of one's own. */
const others = (runIn: Readonly<Record<Duration, RunInPolicy>>) =>
  structuredClone(runIn) as Record<
    Duration,
    { stages: RunInPolicy['stages'][number][]; readingEveryDays: number }
  >

interface StageLineProps {
  readonly stages: LinesState<TypedStage>
  readonly index: number
  readonly last: boolean
  readonly path: string
}

function StageLine({ stages, index, last, path }: StageLineProps) {
  const { runIn: said } = useShop().words.shop
  const length = stages.at(index, 'length')
  const { value: unit } = stages.at(index, 'unit')
  const of = said.stageOf(index + 1)
  // The labels of the first line stand above it like headings; the others are for screen readers.
  const labelled = (label: string) => (index === 0 ? label : `${label}, ${of}`)
  return (
    <div className="stage">
      <TextField label={labelled(said.stage)} hideLabel={index > 0} {...stages.at(index, 'name')} />
      <DecimalField
        label={labelled(said.length)}
        hideLabel={index > 0}
        {...length}
        name={`${path}.stages[${index}].${unit}`}
      />
      <Choice
        label={labelled(said.unit)}
        hideLabel={index > 0}
        choices={said.units}
        {...stages.at(index, 'unit')}
      />
      {last ? <span /> : <RemoveLine what={of} onRemove={() => stages.remove(index)} />}
    </div>
  )
}
