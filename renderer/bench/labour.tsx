import { useState } from 'react'
import type { Task } from '../../core/vocabulary/work.ts'
import { tasks } from '../../core/vocabulary/work.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { answer, api } from '../api.ts'
import { Asking, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../parts/field.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { Section } from '../parts/page.tsx'
import { ProblemList } from '../parts/problems.tsx'
import { TimeField } from '../parts/time-field.tsx'
import { timeWords } from '../parts/time-words.ts'
import { neededNumber, orNull } from '../parts/typed.ts'
import type { Repair } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import type { Card } from './bench.ts'
import { HoursByWork } from './hours-by-work.tsx'
import { StopClock, useIsMine } from './running.tsx'
import { StrikeOut } from './strike-out.tsx'

interface Start {
  readonly repairId: number
  readonly task: Task
  readonly switch: boolean
}

/** The labour clock by task, labour typed afterwards, and every entry with its minutes. */
export function LabourSection({ view, mayStart }: { view: Repair; mayStart: boolean }) {
  const { words } = useShop()
  const { bench } = words
  const isMine = useIsMine()
  const mine = view.bench.labour.running.find(isMine)
  const { number } = view.repair
  const closed = view.standing.blocked.find(({ act }) => act === 'work')
  return (
    <Section title={bench.labour.heading}>
      {mine && <RunningHere entry={mine} number={number} />}
      {closed && <p className="quiet">{problemText(words, { code: closed.code, field: '' })}</p>}
      {mayStart && (
        <TaskButtons view={view} running={mine?.task ?? null} offered={closed ? onlyLook : tasks} />
      )}
      <Opened label={bench.labour.enter}>{close => <EnterLabour view={view} close={close} />}</Opened>
      {view.bench.labour.byWork.length > 0 && <HoursByWork rows={view.bench.labour.byWork} />}
      <Entries labour={view.bench.labour} />
    </Section>
  )
}

type LabourEntry = Card['labour']['entries'][number]

function RunningHere({ entry, number }: { entry: LabourEntry; number: number }) {
  const { words, formats } = useShop()
  return (
    <div className="running">
      <p className="runs-now">
        {words.bench.labour.runsOn(words.tasks[entry.task], formats.instant(entry.startedAt))} ·{' '}
        {timeWords(words, entry.minutes)}
      </p>
      <StopClock one={{ number, forgotten: entry.forgotten }} />
    </div>
  )
}

/** What may be done on a repair that is not open to work: it is looked over. */
const onlyLook: readonly Task[] = ['assess']

interface TaskButtonsProps {
  readonly view: Repair
  readonly running: Task | null
  readonly offered: readonly Task[]
}

/** One large button a task; where a clock runs on another repair it may be stopped first. */
function TaskButtons({ view, running, offered }: TaskButtonsProps) {
  const { words } = useShop()
  const { labour } = words.bench
  const [task, setTask] = useState<Task>('other')
  const repairId = view.repair.id
  const act = useAct((input: Start) => answer(api.bench.startLabour.$post({ json: input })), {
    said: (_, input) => labour.started(view.repair.number, words.tasks[input.task]),
  })
  const elsewhere = act.problems.some(({ code }) => code === 'labour.running')
  return (
    <section className="tasks-now" aria-label={labour.start}>
      <p className="group-label">{labour.start}</p>
      <ProblemList problems={act.problems} />
      {elsewhere && (
        <button type="button" onClick={() => act.run({ repairId, task, switch: true })}>
          {labour.switch}
        </button>
      )}
      <div className="task-buttons">
        {offered.map(one => (
          <button
            key={one}
            type="button"
            className="second"
            aria-pressed={one === running}
            onClick={() => {
              setTask(one)
              act.run({ repairId, task: one, switch: false })
            }}
          >
            {words.tasks[one]}
          </button>
        ))}
      </div>
      <Asking act={act} />
    </section>
  )
}

function EnterLabour({ view, close }: { view: Repair; close: () => void }) {
  const { words, today } = useShop()
  const { labour } = words.bench
  const entry = useEntry({
    task: 'clean' as Task,
    from: '',
    to: '',
    minutes: '',
    on: today,
    note: '',
  })
  const { task, from, to, minutes, on, note } = entry.value
  const timed = minutes.trim() === ''
  const input = () => ({
    repairId: view.repair.id,
    task,
    from: orNull(from),
    to: orNull(to),
    minutes: timed ? null : neededNumber(minutes),
    on: timed ? null : orNull(on),
    note,
  })
  const act = useAct(
    (given: ReturnType<typeof input>) => answer(api.bench.enterLabour.$post({ json: given })),
    { said: ({ minutes: entered }) => labour.said(timeWords(words, entered)), after: close },
  )
  return (
    <OpenForm act={act} input={input} label={labour.enter} send={labour.send} close={close}>
      <p className="quiet">{labour.enterHint}</p>
      <div className="fields">
        <Choice label={labour.task} choices={words.tasks} {...entry.at('task')} />
        <TimeField label={labour.from} hint={labour.timeHint} {...entry.at('from')} />
        <TimeField label={labour.to} hint={labour.timeHint} {...entry.at('to')} />
        <DecimalField label={labour.minutes} {...entry.at('minutes')} />
        <DateField label={labour.on} {...entry.at('on')} />
        <TextField label={labour.note} {...entry.at('note')} />
      </div>
    </OpenForm>
  )
}

function Entries({ labour }: { labour: Card['labour'] }) {
  const { words } = useShop()
  const { labour: said } = words.bench
  const columns: Column<LabourEntry>[] = [
    { label: said.day, kind: 'text', cell: entry => <CivilDate on={entry.on} style="short" /> },
    { label: said.task, kind: 'entry', cell: entry => <EntryWords entry={entry} /> },
    { label: said.who, kind: 'text', cell: entry => entry.person ?? words.bench.running.nobody },
    {
      label: said.time,
      kind: 'figure',
      cell: entry => (entry.struckReason ? words.screens.none : timeWords(words, entry.minutes)),
      total: timeWords(words, labour.totalMinutes),
    },
    {
      label: said.change,
      kind: 'text',
      cell: entry =>
        !entry.struckReason && (
          <StrikeOut
            what={words.tasks[entry.task]}
            send={reason => answer(api.bench.strikeLabour.$post({ json: { entryId: entry.id, reason } }))}
          />
        ),
    },
  ]
  return (
    <Ledger
      caption={said.entries}
      columns={columns}
      groups={[{ title: '', rows: labour.entries }]}
      rowKey={entry => entry.id}
      empty={said.none}
      totalLabel={said.total}
      plain
    />
  )
}

function EntryWords({ entry }: { entry: LabourEntry }) {
  const { words } = useShop()
  const task = words.tasks[entry.task]
  if (entry.struckReason)
    return (
      <>
        <s>{task}</s> <small>{words.screens.struck(entry.struckReason)}</small>
      </>
    )
  return (
    <>
      {task}
      {entry.endedAt === null && ` · ${words.bench.labour.runningNow}`}
      {entry.note && <small>{entry.note}</small>}
    </>
  )
}
