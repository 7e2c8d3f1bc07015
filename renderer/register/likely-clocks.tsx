import { useQuery } from '@tanstack/react-query'
import type { InferResponseType } from 'hono/client'
import { answer, api } from '../api.ts'
import { clockMarks } from '../clock-words.ts'
import { useShop } from '../shop.tsx'
import { Likely, LikelyLine, useLikelyWords } from './likely.tsx'

/** A clock on record that may be the one being described. */
export type LikelyClock = InferResponseType<typeof api.find.clocks.$get>['likely'][number]

interface LikelyClocksProps {
  /** The new clock as typed so far. */
  readonly typed: { readonly maker: string; readonly serial: string }
  /** Clocks on record that were said to be others. */
  readonly otherThan: readonly number[]
  readonly onOtherThan: (ids: readonly number[]) => void
  /** It is this clock. */
  readonly onSame: (clock: LikelyClock) => void
}

/** Clocks on record with the serial number being typed, until it is said which it is. */
export function LikelyClocks({ typed, otherThan, onOtherThan, onSame }: LikelyClocksProps) {
  const { words } = useShop()
  const said = useLikelyWords()
  const asked = { maker: typed.maker.trim(), serial: typed.serial.trim() }
  const { data } = useQuery({
    queryKey: ['likely clocks', asked],
    enabled: asked.serial !== '',
    queryFn: ({ signal }) => answer(api.find.clocks.$get({ query: asked }, { init: { signal } })),
  })
  const found = asked.serial === '' ? [] : (data?.likely ?? []).filter(({ id }) => !otherThan.includes(id))
  return (
    <Likely<LikelyClock>
      title={said.clock}
      found={found}
      keyOf={({ id }) => id}
      show={clock => (
        <LikelyLine
          lead={words.forms[clock.form]}
          rest={[
            clockMarks(words, clock),
            clock.owner && said.clockOf(clock.owner),
            clock.inShop === null ? null : said.inShop(clock.inShop),
          ]}
        />
      )}
      same={({ owner }) => said.sameClock(owner ?? '')}
      onSame={onSame}
      other={said.otherClock}
      onOther={() => onOtherThan([...otherThan, ...found.map(({ id }) => id)])}
    />
  )
}
