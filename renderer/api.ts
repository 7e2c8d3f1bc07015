import { notifyManager, QueryClient } from '@tanstack/react-query'
import { hc } from 'hono/client'
import type { Api } from '../electron/server/api.ts'
import { actingHeader } from './acting.ts'

/** One thing the ledger refused, with its sentence; `field` is a path such as `lines[0].quantity`, or '' for the whole. */
export interface ShownProblem {
  readonly code: string
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

let keyOfCall: string | undefined

/** Sends what `call` sends at once under a key, so that it is done once however often it is sent (the header Idempotency-Key). */
export function underKey<T>(key: string, call: () => T): T {
  keyOfCall = key
  try {
    return call()
  } finally {
    keyOfCall = undefined
  }
}

const keyHeader = (): Record<string, string> => (keyOfCall ? { 'Idempotency-Key': `"${keyOfCall}"` } : {})

/** The typed client of the ledger's requests; acts carry who is at the counter, and the key they are sent under. */
export const api = hc<Api>('/api', {
  headers: () => ({ ...actingHeader(), ...keyHeader() }),
})

/** The same client for a trial: the ledger answers as if the act were done, and keeps nothing of it. */
export const trial = hc<Api>('/api', {
  headers: () => ({ ...actingHeader(), 'Countwheel-Trial': '1' }),
})

interface Answer {
  readonly ok: boolean
  json(): Promise<unknown>
}

const isProblems = (body: unknown): body is { problems: ShownProblem[] } =>
  typeof body === 'object' && body !== null && 'problems' in body && Array.isArray(body.problems)

/** What a request answers. Throws `Refused` with every problem when the ledger refuses, the network's error when it is away. */
export async function answer<R extends Answer>(call: Promise<R>): Promise<Awaited<ReturnType<R['json']>>> {
  const response = await call
  const body = await response.json()
  if (!response.ok) throw isProblems(body) ? new Refused(body.problems) : new Error('unreadable')
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
