import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'
import { Likely, LikelyLine, useLikelyWords } from './likely.tsx'

type LikelyOwner = InferResponseType<typeof api.find.owners.$get>['likely'][number]

interface LikelyOwnersProps {
  /** The new owner as typed so far. */
  readonly typed: { readonly name: string; readonly phone: string; readonly email: string }
  /** Owners on record who were said to be someone else. */
  readonly otherThan: readonly number[]
  readonly onOtherThan: (ids: readonly number[]) => void
  /** It is this owner. */
  readonly onSame: (owner: { readonly id: number; readonly name: string }) => void
}

/** Owners on record who may be the one being typed, until it is said who it is. */
export function LikelyOwners({ typed, otherThan, onOtherThan, onSame }: LikelyOwnersProps) {
  const said = useLikelyWords()
  const asked = { name: typed.name.trim(), phone: typed.phone.trim(), email: typed.email.trim() }
  const { data } = useQuery({
    queryKey: ['likely owners', asked],
    enabled: Object.values(asked).some(text => text.length > 1),
    queryFn: ({ signal }) => answer(api.find.owners.$get({ query: asked }, { init: { signal } })),
  })
  const found = (data?.likely ?? []).filter(({ id }) => !otherThan.includes(id))
  return (
    <Likely<LikelyOwner>
      title={said.owner}
      found={found}
      keyOf={({ id }) => id}
      show={({ name, address, contacts, why }) => (
        <LikelyLine lead={name} rest={[said.why[why], address.replaceAll('\n', ', '), ...contacts]} />
      )}
      same={({ name }) => said.sameOwner(name)}
      onSame={onSame}
      other={said.otherOwner}
      onOther={() => onOtherThan([...otherThan, ...found.map(({ id }) => id)])}
    />
  )
}
