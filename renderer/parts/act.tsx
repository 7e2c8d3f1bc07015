import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from 'react'
import type { Words } from '../../core/words/en/index.ts'
import { api, Refused, type ShownProblem, trial, underKey } from '../api.ts'
import { useWords } from '../words.ts'
import { type SaidPaper, useSay } from './announcer.tsx'
import { Confirm, type Question } from './confirm.tsx'
import { useNamed } from './named.ts'
import { ProblemList, Problems } from './problems.tsx'
import { type Sending, sentOnce, useSending } from './sent.ts'

/** An act of the shop from the page's side: send it, ask first where that is right, and know what was wrong. */
export interface Act<Input> {
  /** Sends the act, or asks first. */
  readonly run: (input: Input) => void
  readonly problems: readonly ShownProblem[]
  readonly busy: boolean
  /** The question that stands open before it is sent. */
  readonly question: (Question & { readonly yes: () => void; readonly no: () => void }) | null
}

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

export interface AskedAct<Input, Result> extends AfterAct<Input, Result> {
  /** What is asked; `tried` is what the act would answer. */
  readonly confirm: (input: Input, tried: Result) => Question
}

/** The sentences for what went wrong; of an act without an answer nobody knows whether it was done (`unknown`). */
function problemsOf(error: Error | null, { screens }: Words, unknown: boolean): readonly ShownProblem[] {
  if (!error) return []
  if (error instanceof Refused) return error.problems
  const message = error instanceof TypeError ? screens.unreachable : screens.unreadable
  return [{ code: 'request.failed', field: '', message: unknown ? screens.unanswered : message }]
}

/** When the control that had the focus went away with its form, the page's heading takes it. */
function keepFocus(): void {
  requestAnimationFrame(() => {
    const lost = document.activeElement === null || document.activeElement === document.body
    if (lost) document.querySelector<HTMLElement>('main h1')?.focus()
  })
}

/** Sends to the ledger; what it refused as problems, which stand until the next answer. */
function useSent<Variables, Result>(
  send: (variables: Variables) => Promise<Result>,
  onSuccess: (r: Result, v: Variables) => void,
  unknown: boolean,
) {
  const words = useWords()
  const say = useSay()
  const cache = useQueryClient()
  // What is refused may have changed meanwhile: it is shown as it stands now.
  const onError = () => void cache.invalidateQueries()
  // What was said of an act before would be taken for an answer to this one.
  const onMutate = () => say('')
  const { mutate, error, isPending } = useMutation({ mutationFn: send, onMutate, onSuccess, onError })
  const [shown, setShown] = useState<{ error: Error | null; problems: readonly ShownProblem[] }>({
    error: null,
    problems: [],
  })
  if (shown.error !== error) setShown({ error, problems: problemsOf(error, words, unknown) })
  return { mutate, problems: shown.problems, busy: isPending }
}

/** Sends an act under a key until it is known what became of it. */
function useOnce<Input, Result>(
  send: (input: Input) => Promise<Result>,
  onSuccess: (r: Result, i: Input) => void,
  key: string | undefined,
) {
  const { screens } = useWords()
  const say = useSay()
  const sending = useSending<Input>(key)
  const once = async ({ key, input }: Sending<Input>): Promise<Result> => {
    try {
      const result = await sentOnce(() => underKey(key, () => send(input)), {
        again: () => say(screens.askingAgain),
      })
      sending.settle()
      return result
    } catch (error) {
      if (error instanceof Refused) sending.settle()
      throw error
    }
  }
  const { mutate, problems, busy } = useSent(once, (result, { input }) => onSuccess(result, input), true)
  return { send: (input: Input) => mutate(sending.of(input)), problems, busy }
}

/**
 * An act of the shop. `send` calls the ledger at once (`answer(api.….$post({ json }))`), for the key it is done under goes with the call.
 * An answer that was lost is asked for again; the act is done once. On refusal everything typed stays and
 * `problems` says why; on success it is said aloud, every page's data is asked for anew, and `after` follows.
 */
export function useAct<Input, Result>(
  send: (input: Input) => Promise<Result>,
  { said, papers, after, key }: AfterAct<Input, Result>,
): Act<Input> {
  const say = useSay()
  const named = useNamed()
  const cache = useQueryClient()
  const done = (result: Result, input: Input) => {
    say(said(result, input), papers?.(result, input))
    void cache.invalidateQueries()
    after?.(result, input)
    keepFocus()
  }
  const { send: sendIt, problems, busy } = useOnce(send, done, key)
  return { run: input => !busy && named(() => sendIt(input)), problems, busy, question: null }
}

/**
 * An act of money or law, which is asked about before it is done (WCAG 3.3.4). It is first tried, so that the question
 * comes only when nothing is wrong: `send` calls whichever ledger it is given (`answer(ledger.….$post({ json }))`).
 */
export function useAskedAct<Input, Result>(
  send: (ledger: typeof api, input: Input) => Promise<Result>,
  { confirm, ...afterwards }: AskedAct<Input, Result>,
): Act<Input> {
  const [asked, setAsked] = useState<{ input: Input; question: Question } | null>(null)
  const named = useNamed()
  const done = useAct((input: Input) => send(api, input), afterwards)
  const tried = useSent(
    (input: Input) => send(trial, input),
    (result: Result, input: Input) => setAsked({ input, question: confirm(input, result) }),
    false,
  )
  const settle = (input: Input | null) => {
    setAsked(null)
    if (input !== null) done.run(input)
  }
  const busy = done.busy || tried.busy
  return {
    run: input => !busy && named(() => tried.mutate(input)),
    // Between the trial and the act something can have changed: what the act itself met counts then.
    problems: tried.problems.length > 0 ? tried.problems : done.problems,
    busy,
    question: asked && {
      ...asked.question,
      yes: () => settle(asked.input),
      no: () => settle(null),
    },
  }
}

export interface ActFormProps<Input> {
  readonly act: Act<Input>
  /** What is sent, put together when the form is. */
  readonly input: () => Input
  readonly className?: string
  readonly label?: string
  /** The cursor goes to the first field when the form appears: for forms that a person opened. */
  readonly focusFirst?: boolean
  /** Enter in a field of one line sends the form; without it only Ctrl Enter and the button do, as suits a whole page. */
  readonly enterSends?: boolean
  readonly children: ReactNode
}

/** Puts the cursor into the first field of a form that a person has just opened. */
function useFocusFirst(focusFirst: boolean) {
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (focusFirst) form.current?.querySelector<HTMLElement>('input, select, textarea')?.focus()
  }, [focusFirst])
  return form
}

/** Ctrl Enter sends the form from any of its fields, also from several lines of text. */
function sendByKey(event: KeyboardEvent<HTMLFormElement>, enterSends: boolean): void {
  if (event.key !== 'Enter') return
  const command = event.ctrlKey || event.metaKey
  if (command || (!enterSends && event.target instanceof HTMLInputElement)) event.preventDefault()
  if (command) event.currentTarget.requestSubmit()
}

/** The form of an act: problems on top, then its fields; asks where the act asks. */
export function ActForm<Input>({
  act,
  input,
  className = 'form',
  label,
  focusFirst = false,
  enterSends = true,
  children,
}: ActFormProps<Input>) {
  const form = useFocusFirst(focusFirst)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    act.run(input())
  }
  return (
    <form
      ref={form}
      className={className}
      aria-label={label}
      noValidate
      onSubmit={submit}
      onKeyDown={event => sendByKey(event, enterSends)}
    >
      <ProblemList problems={act.problems} />
      <Problems value={act.problems}>{children}</Problems>
      <Asking act={act} />
    </form>
  )
}

/** The act's open question, if it has one. Needed only where an act has no `ActForm` and no `ActButton`. */
export function Asking<Input>({ act: { question } }: { act: Act<Input> }) {
  return question && <Confirm {...question} onYes={question.yes} onNo={question.no} />
}

type Look = 'first' | 'second' | 'plain'

/** The button that sends an `ActForm`. */
export function Send<Input>({
  act,
  children,
  look = 'first',
}: {
  act: Act<Input>
  children: ReactNode
  look?: Look
}) {
  return (
    <button type="submit" className={look} aria-disabled={act.busy || undefined}>
      {children}
    </button>
  )
}

/** An act that needs nothing typed: a button, with its problems below it. */
export function ActButton<Input>(props: {
  act: Act<Input>
  input: Input
  look?: Look
  /** Says more than the button's words where several of them stand on a page. */
  label?: string
  children: ReactNode
}) {
  const { act, input, look = 'first', label, children } = props
  return (
    <>
      <button
        type="button"
        className={look}
        aria-label={label}
        aria-disabled={act.busy || undefined}
        onClick={() => act.run(input)}
      >
        {children}
      </button>
      <ProblemList problems={act.problems} />
      <Asking act={act} />
    </>
  )
}
