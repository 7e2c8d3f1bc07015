import { useQuery } from '@tanstack/react-query'
import { useLayoutEffect, useRef, useState } from 'react'
import { clockMarks, clockWords } from '../../clock-words.ts'
import { useSay } from '../../parts/announcer.tsx'
import { Choice } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { focusLater } from '../book/from-book.tsx'
import { type Repair, repairQuery } from '../repair.ts'
import { SectionFields } from './section-fields.tsx'
import type { EstimateSheet } from './sheet.ts'
import { isAgreed } from './starting-lines.ts'

/** The repairs that stood on the last version and can stand on the next, by their numbers: those not agreed yet. */
export function joinedBefore(view: Repair): number[] {
  const last = isAgreed(view) ? undefined : view.estimates.at(-1)
  const still = view.repairsToJoin.map(({ number }) => number)
  return (last?.together ?? [])
    .filter(({ repairNumber, answer }) => still.includes(repairNumber) && answer !== 'go-ahead')
    .map(({ repairNumber }) => repairNumber)
}

interface JoinedProps {
  readonly view: Repair
  readonly sheet: EstimateSheet
  readonly joined: readonly number[]
  readonly onChange: (joined: readonly number[]) => void
}

/** Further repairs of the owner on the same estimate, each with lines of its own, and a choice to add one. */
export function JoinedRepairs({ view, sheet, joined, onChange }: JoinedProps) {
  const { repair } = useShop().words
  const say = useSay()
  const leave = (number: number) => {
    onChange(joined.filter(one => one !== number))
    say(repair.estimateForm.leftOut(number))
    focusLater('join')
  }
  const add = (number: number) => {
    onChange([...joined, number])
    say(repair.estimateForm.joined(number))
  }
  return (
    <>
      {joined.map((number, index) => (
        <Joined
          key={number}
          number={number}
          path={`others[${index}]`}
          sheet={sheet}
          onLeave={() => leave(number)}
        />
      ))}
      <AddRepair view={view} joined={joined} onAdd={add} />
    </>
  )
}

interface OneProps {
  readonly number: number
  readonly path: string
  readonly sheet: EstimateSheet
  readonly onLeave: () => void
}

/** Another repair of the owner, as soon as what is on record of it is here; the cursor goes to its first line. */
function Joined({ number, path, sheet, onLeave }: OneProps) {
  const { words } = useShop()
  const { estimateForm } = words.repair
  const { data } = useQuery(repairQuery(String(number)))
  const here = useRef<HTMLFieldSetElement>(null)
  const there = data !== undefined
  useLayoutEffect(() => {
    if (there) here.current?.querySelector<HTMLElement>('textarea')?.focus()
  }, [there])
  if (!data) return null
  return (
    <fieldset className="joined" ref={here}>
      <legend>{words.repair.title(number, clockWords(words, data.clock))}</legend>
      <p className="quiet">
        {[clockMarks(words, data.clock), data.repair.fault].filter(Boolean).join(' · ')}
      </p>
      <SectionFields view={data} path={path} sheet={sheet} />
      <button type="button" className="plain" onClick={onLeave}>
        {estimateForm.leaveOut(number)}
      </button>
    </fieldset>
  )
}

/** The owner's other open repairs, to choose one from; nothing where there is none. */
function AddRepair({
  view,
  joined,
  onAdd,
}: Pick<JoinedProps, 'view' | 'joined'> & { onAdd: (n: number) => void }) {
  const { words } = useShop()
  const { estimateForm } = words.repair
  const left = view.repairsToJoin.filter(({ number }) => !joined.includes(number))
  const [chosen, setChosen] = useState('')
  const number = left.some(one => String(one.number) === chosen) ? chosen : String(left[0]?.number ?? '')
  if (left.length === 0) return null
  return (
    <div className="join-repair">
      <Choice
        name="join"
        label={estimateForm.join(view.owner.name)}
        choices={Object.fromEntries(
          left.map(one => [String(one.number), words.repair.title(one.number, clockWords(words, one.clock))]),
        )}
        value={number}
        onChange={setChosen}
      />
      <button type="button" className="second" onClick={() => onAdd(Number(number))}>
        {estimateForm.joinIt}
      </button>
    </div>
  )
}
