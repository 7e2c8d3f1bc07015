import { DoneBefore, Refused, type ShownProblem } from '../api.ts'

/**
 * Where a form's act stands: nothing on its way, sent and not answered yet, or sent and no answer came, so that nobody knows whether it
 * was done. The key is what it is done once under.
 */
export type Sent<Input> =
  | { readonly at: 'rest'; readonly key: string }
  | { readonly at: 'sent' | 'unknown'; readonly key: string; readonly input: Input }

/** What a press leads to: the act is sent, or it is asked what became of the one that was sent with other words. */
export interface Step<Input> {
  readonly kind: 'send' | 'ask'
  readonly key: string
  readonly input: Input
  /** It was sent before and not answered. */
  readonly lostBefore: boolean
}

/** How a step ended. Not done: what was sent with other words had not been done, and nothing was done now. */
export type End = 'done' | 'not done' | 'refused' | 'lost'

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** What pressing the button leads to while `input` stands in the form; null while an answer is awaited. */
export function pressed<Input>(sent: Sent<Input>, input: Input): Step<Input> | null {
  if (sent.at === 'sent') return null
  const { key } = sent
  if (sent.at === 'rest') return { kind: 'send', key, input, lostBefore: false }
  return { kind: same(sent.input, input) ? 'send' : 'ask', key, input: sent.input, lostBefore: true }
}

/** Where the act stands after a step. Only an act that was done gives up its key: what follows is another act. */
export function ended<Input>({ key, input }: Step<Input>, end: End, newKey: () => string): Sent<Input> {
  if (end === 'lost') return { at: 'unknown', key, input }
  return { at: 'rest', key: end === 'done' ? newKey() : key }
}

/** Nobody knows whether the act was done; with what the ledger said instead, if it said anything. */
export class Unanswered extends Error {
  override readonly name = 'Unanswered'
  readonly problems: readonly ShownProblem[]
  constructor(cause: unknown) {
    super('unanswered', { cause })
    this.problems = cause instanceof Refused ? cause.problems : []
  }
}

/** How long is waited before it is asked again what became of an act, in milliseconds. */
const pausesMs = [400, 1200, 3000] as const

const wait = (ms: number) => new Promise<void>(resolve => setTimeout(resolve, ms))

const isAnswer = (error: unknown) => error instanceof Refused || error instanceof DoneBefore

/** The way to the ledger. */
export interface Line<Input, Result> {
  /** Sends the act under a key: what was done, or Refused. */
  readonly send: (key: string, input: Input) => Promise<Result>
  /** Tries the act under a key, which writes nothing: throws DoneBefore where it was done under it. */
  readonly attempt: (key: string, input: Input) => Promise<unknown>
  /** Called each time before it is asked again. */
  readonly again?: () => void
  readonly pausesMs?: readonly number[]
}

/** What was done: the act as it was sent, which is not what stands in the form where `changed`. */
export interface Done<Input, Result> {
  readonly input: Input
  readonly result: Result
  readonly changed: boolean
}

/** A refusal of the request before its act was looked at says nothing about what was sent earlier. */
const beforeTheAct = (error: unknown): boolean =>
  error instanceof Refused && error.problems.every(({ code }) => /^(request|ledger)\./.test(code))

/** A form's act, sent until it is known what became of it, and done once. */
export class Sending<Input> {
  #sent: Sent<Input>
  readonly #newKey: () => string

  constructor(newKey: () => string) {
    this.#newKey = newKey
    this.#sent = { at: 'rest', key: newKey() }
  }

  /** No answer came to what was sent last. */
  get unknown(): boolean {
    return this.#sent.at === 'unknown'
  }

  /** Begins what a press leads to, which is then to be carried; null while something is on its way. */
  press(input: Input): Step<Input> | null {
    const step = pressed(this.#sent, input)
    if (step) this.#sent = { at: 'sent', key: step.key, input: step.input }
    return step
  }

  /** Carries a step out: what was done, or null where the act of before was not. Throws Refused, or Unanswered where nobody knows. */
  async carry<Result>(step: Step<Input>, line: Line<Input, Result>): Promise<Done<Input, Result> | null> {
    let { lostBefore } = step
    const again = () => {
      lostBefore = true
      line.again?.()
    }
    try {
      const answered = step.kind === 'send' ? line.send : line.attempt
      const result = await untilAnswered(() => answered(step.key, step.input), again, line.pausesMs)
      if (step.kind === 'ask') return this.#end(step, 'not done', null)
      return this.#end(step, 'done', { input: step.input, result: result as Result, changed: false })
    } catch (error) {
      return this.#failed(step, error, lostBefore)
    }
  }

  #failed<Result>(step: Step<Input>, error: unknown, lostBefore: boolean): Done<Input, Result> | null {
    if (error instanceof DoneBefore)
      return this.#end(step, 'done', { input: step.input, result: error.result as Result, changed: true })
    const unknown = !(error instanceof Refused) || (lostBefore && beforeTheAct(error))
    if (unknown) throw this.#end(step, 'lost', new Unanswered(error))
    // The key is looked for before anything else of an act: what is refused was not done.
    if (step.kind === 'ask') return this.#end(step, 'not done', null)
    throw this.#end(step, 'refused', error)
  }

  #end<T>(step: Step<Input>, end: End, outcome: T): T {
    this.#sent = ended(step, end, this.#newKey)
    return outcome
  }
}

/** Sends what is safe to send twice until an answer comes, a few times; throws the last failure where none comes at all. */
export async function untilAnswered<T>(
  send: () => Promise<T>,
  again?: () => void,
  pauses: readonly number[] = pausesMs,
) {
  for (const pause of pauses) {
    try {
      return await send()
    } catch (error) {
      if (isAnswer(error)) throw error
    }
    again?.()
    await wait(pause)
  }
  return send()
}
