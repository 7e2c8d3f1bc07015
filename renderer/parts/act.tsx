import { type FormEvent, type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from 'react'
import { api, type ShownProblem, trial } from '../api.ts'
import { useWords } from '../words.ts'
import { Confirm, type Question } from './confirm.tsx'
import { useNamed } from './named.ts'
import { type AfterAct, type SendAct, useOnce, useSent } from './once.ts'
import { ProblemList, Problems } from './problems.tsx'

/** An act of the shop from the page's side: send it, ask first where that is right, and know what was wrong. */
export interface Act<Input> {
  /** Sends the act, or asks first. Where it is not known what became of the last one, it finds that out first. */
  readonly run: (input: Input) => void
  readonly problems: readonly ShownProblem[]
  readonly busy: boolean
  /** No answer came to what was sent: nobody knows whether it was done. */
  readonly unknown: boolean
  /** The question that stands open before it is sent. */
  readonly question: (Question & { readonly yes: () => void; readonly no: () => void }) | null
}

export interface AskedAct<Input, Result> extends AfterAct<Input, Result> {
  /** What is asked; `tried` is what the act would answer. */
  readonly confirm: (input: Input, tried: Result) => Question
}

/**
 * An act of the shop. `send` calls the ledger at once (`answer(api.….$post({ json }))`), for the key it is done under goes with the call.
 * An answer that was lost is asked for again; the act is done once. On refusal everything typed stays and
 * `problems` says why; on success it is said aloud, every page's data is asked for anew, and `after` follows.
 */
export function useAct<Input, Result>(
  send: SendAct<Input, Result>,
  afterwards: AfterAct<Input, Result>,
): Act<Input> {
  const named = useNamed()
  const { press, ...sent } = useOnce(send, afterwards)
  const go = (input: Input): void => press(input, () => go(input))
  return { run: input => !sent.busy && named(() => go(input)), ...sent, question: null }
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
  const done = useOnce((input: Input) => send(api, input), afterwards)
  const tried = useSent(
    (input: Input) => send(trial, input),
    (result: Result, input: Input) => setAsked({ input, question: confirm(input, result) }),
  )
  const first = (input: Input) => tried.mutate(input)
  // What was agreed to and sent is not asked about a second time; what is typed anew is, once that is settled.
  const go = (input: Input) => (done.unknown ? done.press(input, () => first(input)) : first(input))
  const settle = (input: Input | null) => {
    setAsked(null)
    if (input !== null) done.press(input, () => first(input))
  }
  const busy = done.busy || tried.busy
  return {
    run: input => !busy && named(() => go(input)),
    // Between the trial and the act something can have changed: what the act itself met counts then.
    problems: tried.problems.length > 0 ? tried.problems : done.problems,
    busy,
    unknown: done.unknown,
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
      <ProblemList problems={act.problems}>{act.unknown && <AskAgain type="submit" />}</ProblemList>
      <Problems value={act.problems}>{children}</Problems>
      <Asking act={act} />
    </form>
  )
}

/** The act's open question, if it has one. Needed only where an act has no `ActForm` and no `ActButton`. */
export function Asking<Input>({ act: { question } }: { act: Act<Input> }) {
  return question && <Confirm {...question} onYes={question.yes} onNo={question.no} />
}

/** Asks what became of an act to which no answer came; the form's own button does so too. */
function AskAgain(props: { type: 'submit' | 'button'; onClick?: () => void }) {
  const { screens } = useWords()
  return (
    <button {...props} className="second">
      {screens.askAgain}
    </button>
  )
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
      <ProblemList problems={act.problems}>
        {act.unknown && <AskAgain type="button" onClick={() => act.run(input)} />}
      </ProblemList>
      <Asking act={act} />
    </>
  )
}
