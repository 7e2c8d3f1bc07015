import { notifyManager, QueryClient } from '@tanstack/react-query'
import { hc } from 'hono/client'
import type { ProblemCode } from '../core/problems.ts'
import type { Refusal as TurnedAway } from '../core/words/en/start.ts'
import type { Api } from '../electron/server/api.ts'
import { actingHeader } from './acting.ts'

/** One thing the ledger refused, with its sentence; `field` is a path such as `lines[0].quantity`, or '' for the whole. */
export interface ShownProblem {
  readonly code: ProblemCode | TurnedAway
  readonly field: string
  readonly message: string
}

/** The ledger understood the request and refused it; nothing was written. */
export class Refused extends Error {
  override readonly name = 'Refused'
  readonly problems: readonly ShownProblem[]
  constructor(problems: readonly ShownProblem[]) {
    super(problems.map(({ message }) => message).join(' '))
    this.problems = problems
  }
}

/** A trial found that the act was done before under its key; `result` is what was answered then. */
export class DoneBefore extends Error {
  override readonly name = 'DoneBefore'
  readonly result: unknown
  constructor(result: unknown) {
    super('done before')
    this.result = result
  }
}

/** How an act is sent: under a key, so that it is done once however often it is sent; a trial does nothing. */
export interface Under {
  readonly key: string
  readonly trial?: boolean
}

const trialHeader = { 'Countwheel-Trial': '1' }

let ofThisCall: Record<string, string> = {}

/** Sends what `call` sends at once as `under` says (the header Idempotency-Key, a quoted string). */
export function callUnder<T>({ key, trial = false }: Under, call: () => T): T {
  ofThisCall = { 'Idempotency-Key': `"${key}"`, ...(trial ? trialHeader : {}) }
  try {
    return call()
  } finally {
    ofThisCall = {}
  }
}

/** How long an act waits for its answer before it is asked again what became of it, in milliseconds. */
const patienceMs = 30_000

/** Sends a request; one that has a key is given up when no answer came within `ms`, for it can be asked for again. */
export const fetchPatiently =
  (ms: number): typeof fetch =>
  (input, init) =>
    new Headers(init?.headers).has('Idempotency-Key')
      ? fetch(input, { ...init, signal: AbortSignal.timeout(ms) })
      : fetch(input, init)

/** What every client of the ledger's requests sends along: acts carry who is at the counter, and how they are sent. */
export const asClient = {
  headers: () => ({ ...actingHeader(), ...ofThisCall }),
  fetch: fetchPatiently(patienceMs),
}

/** The typed client of the ledger's requests. */
export const api = hc<Api>('/api', asClient)

/** The same client for a trial: the ledger answers as if the act were done, and keeps nothing of it. */
export const trial = hc<Api>('/api', { headers: () => ({ ...actingHeader(), ...trialHeader }) })

interface Answer {
  readonly ok: boolean
  readonly headers: Headers
  json(): Promise<unknown>
}

const isProblems = (body: unknown): body is { problems: ShownProblem[] } =>
  typeof body === 'object' && body !== null && 'problems' in body && Array.isArray(body.problems)

/**
 * What a request answers. Throws `Refused` with every problem when the ledger refuses, `DoneBefore` where a trial finds its act done, the
 * network's error when the ledger is away.
 */
export async function answer<R extends Answer>(call: Promise<R>): Promise<Awaited<ReturnType<R['json']>>> {
  const response = await call
  const body = await response.json()
  if (!response.ok) throw isProblems(body) ? new Refused(body.problems) : new Error('unreadable')
  if (response.headers.has('Countwheel-Done')) throw new DoneBefore(body)
  return body as Awaited<ReturnType<R['json']>>
}

// An answer is shown when it is there, not a timer later.
notifyManager.setScheduler(queueMicrotask)

/** The only cache of the pages. The ledger is on this computer: what is shown is asked for again at each visit. */
export const queries = new QueryClient({
  defaultOptions: {
    queries: { retry: false, staleTime: 0, networkMode: 'always' },
    mutations: { networkMode: 'always' },
  },
})
