import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Words } from '../../core/words/en/index.ts'
import { callUnder, Refused, type ShownProblem, type Under } from '../api.ts'
import { useWords } from '../words.ts'
import { type SaidPaper, useSay } from './announcer.tsx'
import { type Done, type Line, Sending, type Step, Unanswered } from './sent.ts'

export interface AfterAct<Input, Result> {
  /** What the status strip says once it is written. */
  readonly said: (result: Result, input: Input) => string
  /** The papers that came of it, to be led to from the status strip. */
  readonly papers?: (result: Result, input: Input) => readonly SaidPaper[]
  /** What the act is done once under, where the form has a key of its own, such as its draft’s; otherwise each doing gets one. */
  readonly key?: string
  /** What follows: closing a form, turning to another page. */
  readonly after?: (result: Result, input: Input) => void
}

/** Makes a call under the act's key: for an act that has something else to wait for before it calls. */
export type Now = <T>(call: () => T) => T

/** Calls the ledger with what is typed, at once or through `now`. */
export type SendAct<Input, Result> = (input: Input, now: Now) => Promise<Result>

/** The sentences for what went wrong; of an act without an answer nobody knows whether it was done. */
function problemsOf(error: Error | null, { screens }: Words): readonly ShownProblem[] {
  if (!error) return []
  if (error instanceof Refused) return error.problems
  const failed = (message: string): ShownProblem[] => [{ code: 'request.failed', field: '', message }]
  if (error instanceof Unanswered) return [...error.problems, ...failed(screens.unanswered)]
  return failed(error instanceof TypeError ? screens.unreachable : screens.unreadable)
}

/** When the control that had the focus went away with its form, the page's heading takes it. */
function keepFocus(): void {
  requestAnimationFrame(() => {
    const lost = document.activeElement === null || document.activeElement === document.body
    if (lost) document.querySelector<HTMLElement>('main h1')?.focus()
  })
}

/** Sends to the ledger; what it refused as problems, which stand until the next answer. */
export function useSent<Variables, Result>(
  send: (variables: Variables) => Promise<Result>,
  onSuccess: (r: Result, v: Variables) => void,
) {
  const words = useWords()
  const say = useSay()
  const cache = useQueryClient()
  const onError = (error: Error) => {
    // What was said while it was asked again is over.
    say('')
    // What is refused may have changed meanwhile: it is shown as it stands now. Of what is not known the form stays as it is.
    if (!(error instanceof Unanswered)) void cache.invalidateQueries()
  }
  // What was said of an act before would be taken for an answer to this one.
  const onMutate = () => say('')
  const { mutate, error, isPending } = useMutation({ mutationFn: send, onMutate, onSuccess, onError })
  const [shown, setShown] = useState<{ error: Error | null; problems: readonly ShownProblem[] }>({
    error: null,
    problems: [],
  })
  if (shown.error !== error) setShown({ error, problems: problemsOf(error, words) })
  return { mutate, problems: shown.problems, busy: isPending, unknown: error instanceof Unanswered }
}

/** What follows once an act is done: it is said aloud, and every page's data is asked for anew. */
function useAfterwards<Input, Result>({ said, papers, after }: AfterAct<Input, Result>) {
  const { screens } = useWords()
  const say = useSay()
  const cache = useQueryClient()
  return ({ result, input, changed }: Done<Input, Result>) => {
    const words = said(result, input)
    say(changed ? `${words} ${screens.changedSince}` : words, papers?.(result, input))
    void cache.invalidateQueries()
    after?.(result, input)
    keepFocus()
  }
}

interface Carrying<Input> {
  readonly step: Step<Input>
  /** What follows with what stands in the form, where the act of before turns out not to have been done. */
  readonly instead: () => void
}

/** Sends an act under a key until it is known what became of it. */
export function useOnce<Input, Result>(send: SendAct<Input, Result>, afterwards: AfterAct<Input, Result>) {
  const { screens } = useWords()
  const say = useSay()
  const done = useAfterwards(afterwards)
  const { key } = afterwards
  const [form] = useState(() => new Sending<Input>(() => key || crypto.randomUUID()))
  const call = (under: Under, input: Input) => {
    const now: Now = call => callUnder(under, call)
    return now(() => send(input, now))
  }
  const line: Line<Input, Result> = {
    send: (key, input) => call({ key }, input),
    attempt: (key, input) => call({ key, trial: true }, input),
    again: () => say(screens.askingAgain),
  }
  const { mutate, ...sent } = useSent(
    ({ step }: Carrying<Input>) => form.carry(step, line),
    (carried, { instead }) => (carried ? done(carried) : instead()),
  )
  const press = (input: Input, instead: () => void) => {
    const step = form.press(input)
    if (step) mutate({ step, instead })
  }
  return { press, ...sent }
}
