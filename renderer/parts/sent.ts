import { useRef } from 'react'
import { Refused } from '../api.ts'

/** An act on its way: what is sent, and the key under which it is done once however often it is sent. */
export interface Sending<Input> {
  readonly key: string
  readonly input: Input
}

/** How long is waited before it is asked again what became of an act, in milliseconds. */
const pausesMs = [400, 1200, 3000] as const

const wait = (ms: number) => new Promise<void>(resolve => setTimeout(resolve, ms))

export interface Asking {
  /** Called each time before it is asked again. */
  readonly again?: () => void
  readonly pauses?: readonly number[]
}

/**
 * Sends an act until an answer comes: what was done, or `Refused`. An act whose answer was lost may have been done; sent again under its
 * key it is not done again, and its first answer comes. Throws the last failure where none comes at all: then nobody knows.
 */
export async function sentOnce<Result>(
  send: () => Promise<Result>,
  { again, pauses = pausesMs }: Asking = {},
): Promise<Result> {
  for (const pause of pauses) {
    try {
      return await send()
    } catch (error) {
      if (error instanceof Refused) throw error
    }
    again?.()
    await wait(pause)
  }
  return send()
}

/**
 * What a form has on its way. Until it is known what became of it, pressing again asks for that very act, whatever was typed since;
 * the next one begins when it was done or refused. `fixedKey` is a form's own key where it has one, such as a draft's.
 */
export function useSending<Input>(fixedKey?: string) {
  const onItsWay = useRef<Sending<Input> | null>(null)
  return {
    of: (input: Input): Sending<Input> => {
      onItsWay.current ??= { key: fixedKey || crypto.randomUUID(), input }
      return onItsWay.current
    },
    settle: () => {
      onItsWay.current = null
    },
  }
}
