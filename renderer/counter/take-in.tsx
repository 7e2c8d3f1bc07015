import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Redirect, useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { Draft, useDraft } from '../parts/draft.tsx'
import { MarginDay } from '../parts/figures.tsx'
import type { Now } from '../parts/once.ts'
import { EntryLine, Page } from '../parts/page.tsx'
import { usePrintPaper } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { BelongingsSection } from './take-in-belongings.tsx'
import { ClockSection } from './take-in-clock.tsx'
import { ConditionSection } from './take-in-condition.tsx'
import { type TakeInStart, takeInInput, takeInTitle, useTakeIn } from './take-in-entry.ts'
import { OwnerSection } from './take-in-owner.tsx'
import { CostSection, FaultSection, SignatureSection } from './take-in-rest.tsx'
import { startFrom } from './take-in-start.ts'

/** Where a taking in is begun, or gone on with under the key of its draft. */
const placeOf = (asked: URLSearchParams, draft: string) =>
  `/counter/take-in?${new URLSearchParams([...asked, ['draft', draft]])}`

/** Taking a clock in. Each has a draft of its own, whose key is in the address: going back to it finds what was typed. */
export function TakeIn() {
  const [asked] = useSearchParams()
  const [newKey] = useState(() => crypto.randomUUID())
  const draft = asked.get('draft')
  if (draft === null) return <Redirect to={placeOf(asked, newKey)} replace />
  return (
    <Draft key={draft} page="take-in" draftKey={draft} titleOf={takeInTitle}>
      <Begin asked={asked} />
    </Draft>
  )
}

/** Begins from what the address says; once something was typed, from that. */
function Begin({ asked }: { asked: URLSearchParams }) {
  const { fresh } = useDraft()
  const name = asked.get('owner') ?? ''
  const { data: start, isPending } = useQuery({
    queryKey: ['take-in start', asked.toString()],
    queryFn: () => startFrom(asked).catch(() => ({ name })),
    enabled: fresh,
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  })
  return fresh && isPending ? null : <TakeInPage start={start ?? { name }} />
}

/** Throws the draft away and begins a blank page. */
function useClear() {
  const [, navigate] = useLocation()
  const { key, ending } = useDraft()
  const cache = useQueryClient()
  return async () => {
    await ending(() => answer(api.drafts[':key'].drop.$put({ param: { key } })))
    void cache.invalidateQueries({ queryKey: ['drafts'] })
    navigate(placeOf(new URLSearchParams(), crypto.randomUUID()), { replace: true })
  }
}

/** One page, in the order things are said and laid on the counter. */
function TakeInPage({ start }: { start: TakeInStart }) {
  const { words, today } = useShop()
  const { takeIn } = words.counter
  const [, navigate] = useLocation()
  const print = usePrintPaper()
  const draft = useDraft()
  const clear = useClear()
  const entry = useTakeIn(start)
  const act = useAct(
    (input: ReturnType<typeof takeInInput>, now: Now) =>
      draft.ending(() => now(() => answer(api.counter.takeIn.$post({ json: input })))),
    {
      // Its draft may stand open in a second window.
      key: draft.key,
      said: ({ number }) => takeIn.said(number),
      after: ({ number, claimCheckId }) => {
        navigate(`/counter/${number}`)
        void print(claimCheckId)
      },
    },
  )
  return (
    <ActForm
      act={act}
      input={() => takeInInput(entry, draft.key)}
      className="whole-page"
      focusFirst
      enterSends={false}
      label={takeIn.title}
    >
      <Page
        title={takeIn.title}
        date={<MarginDay on={today} />}
        subtitle={takeIn.sendKeys}
        entry={
          <EntryLine label={takeIn.title}>
            <div className="line">
              <span className="label" />
              <div className="buttons">
                <Send act={act}>{takeIn.send}</Send>
                <button type="button" className="plain" onClick={clear}>
                  {takeIn.clear}
                </button>
              </div>
            </div>
          </EntryLine>
        }
      >
        <OwnerSection entry={entry} />
        <ClockSection entry={entry} />
        <FaultSection entry={entry} />
        <ConditionSection entry={entry} />
        <BelongingsSection entry={entry} />
        <CostSection entry={entry} />
        <SignatureSection entry={entry} />
      </Page>
    </ActForm>
  )
}
