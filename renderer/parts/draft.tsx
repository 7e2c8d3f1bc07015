import { useQuery } from '@tanstack/react-query'
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from 'react'
import { answer, api } from '../api.ts'
import { soon } from './soon.ts'

type Body = Readonly<Record<string, unknown>>

interface Holder {
  readonly key: string
  /** What was typed before under this name. */
  readonly body: Body
  /** Says what stands there before anything is typed; it is kept along with the first thing typed. */
  seed(name: string, value: unknown): void
  keep(name: string, value: unknown): void
  /** Keeps nothing more; settles once nothing is on its way to the ledger. */
  close(): Promise<void>
  /** Begins to keep again. */
  reopen(): void
}

const DraftContext = createContext<Holder | null>(null)

/** No wait: each key is written as it is typed, the next write going out when the one before has ended. */
const pauseMs = 0

/** Writes what is typed to the ledger as it is typed, and what is left when the page goes away. */
function useKeeper(page: string, key: string, start: Body, titleOf: (body: Body) => string) {
  const [holder] = useState<Holder & { flush(): void }>(() => {
    let body = start
    const write = () => {
      const json = { page, title: titleOf(body), body: { ...body } }
      // A draft that cannot be kept is no reason to disturb its writer: the form itself still holds it.
      return api.drafts[':key'].$put({ param: { key }, json }, { init: { keepalive: true } }).catch(() => {})
    }
    const { changed, flush, close, reopen } = soon(write, pauseMs)
    return {
      key,
      body: start,
      seed: (name, value) => {
        body = { [name]: value, ...body }
      },
      keep: (name, value) => {
        body = { ...body, [name]: value }
        changed()
      },
      flush,
      close,
      reopen,
    }
  })
  useEffect(() => {
    window.addEventListener('pagehide', holder.flush)
    return () => {
      window.removeEventListener('pagehide', holder.flush)
      holder.flush()
    }
  }, [holder])
  return holder
}

interface DraftProps {
  /** The page it belongs to, as the ledger lists drafts. */
  readonly page: string
  readonly draftKey: string
  /** How a list tells it from another, from what is typed so far. */
  readonly titleOf: (body: Body) => string
  readonly children: ReactNode
}

/** What is typed inside is kept in the ledger until it is entered, so that neither a call away nor a power cut loses it. */
export function Draft({ draftKey, ...props }: DraftProps) {
  const { data } = useQuery({
    queryKey: ['draft', draftKey],
    queryFn: () => begun(props.page, draftKey),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  })
  return data && <Kept key={draftKey} draftKey={draftKey} start={data} {...props} />
}

/** What was typed under the key before; nothing when the ledger's list of drafts does not have it. */
async function begun(page: string, key: string): Promise<Body> {
  const { drafts } = await answer(api.drafts.$get({ query: { page } }))
  if (!drafts.some(draft => draft.key === key)) return {}
  const { body } = await answer(api.drafts[':key'].$get({ param: { key } }))
  return body as Body
}

function Kept({ page, draftKey, start, titleOf, children }: DraftProps & { start: Body }) {
  const holder = useKeeper(page, draftKey, start, titleOf)
  return <DraftContext value={holder}>{children}</DraftContext>
}

/** The draft being typed: its key, and how to end it. */
export function useDraft() {
  const holder = useContext(DraftContext)
  return {
    key: holder?.key ?? '',
    /** Nothing was typed under it before. */
    fresh: Object.keys(holder?.body ?? {}).length === 0,
    /** Enters or throws away what was typed: nothing is kept meanwhile and after; on failure keeping goes on. */
    ending: async <T,>(send: () => Promise<T>): Promise<T> => {
      await holder?.close()
      try {
        return await send()
      } catch (error) {
        holder?.reopen()
        throw error
      }
    },
  }
}

/** State that is part of the draft around it under `name`; ordinary state without a name or a draft. */
export function useKept<T>(name: string | undefined, initial: T | (() => T)) {
  const holder = useContext(DraftContext)
  const state = useState<T>(() => {
    const before = name === undefined ? undefined : (holder?.body[name] as T | undefined)
    return before ?? (initial instanceof Function ? initial() : initial)
  })
  const [value] = state
  const known = useRef<{ value: T } | null>(null)
  useEffect(() => {
    if (name === undefined || known.current?.value === value) return
    if (known.current === null) holder?.seed(name, value)
    else holder?.keep(name, value)
    known.current = { value }
  }, [name, value, holder])
  return state
}
