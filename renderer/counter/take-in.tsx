import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Redirect, useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { Draft, useDraft } from '../parts/draft.tsx'
import { MarginDay } from '../parts/figures.tsx'
import { EntryLine, Page } from '../parts/page.tsx'
import { usePrintPaper } from '../parts/paper-link.tsx'
import { repairQuery } from '../repair/repair.ts'
import { useShop } from '../shop.tsx'
import { BelongingsSection } from './take-in-belongings.tsx'
import { ClockSection } from './take-in-clock.tsx'
import { ConditionSection } from './take-in-condition.tsx'
import { type TakeInStart, takeInInput, takeInTitle, useTakeIn } from './take-in-entry.ts'
import { OwnerSection } from './take-in-owner.tsx'
import { CostSection, FaultSection, SignatureSection } from './take-in-rest.tsx'

/** Where a taking in is begun, or gone on with under the key of its draft. */
const placeOf = (owner: string, draft: string, comeback = '') =>
  `/counter/take-in?${new URLSearchParams({ owner, draft, ...(comeback ? { comeback } : {}) })}`

/** Taking a clock in. Each has a draft of its own, whose key is in the address: going back to it finds what was typed. */
export function TakeIn() {
  const [asked] = useSearchParams()
  const [newKey] = useState(() => crypto.randomUUID())
  const owner = asked.get('owner') ?? ''
  const comeback = asked.get('comeback') ?? ''
  const draft = asked.get('draft')
  if (draft === null) return <Redirect to={placeOf(owner, newKey, comeback)} replace />
  return (
    <Draft key={draft} page="take-in" draftKey={draft} titleOf={takeInTitle}>
      {comeback ? <ComebackPage number={comeback} owner={owner} /> : <TakeInPage start={{ name: owner }} />}
    </Draft>
  )
}

/** A taking in that is begun from an earlier repair: its owner, its clock and what it comes back from are chosen already. */
function ComebackPage({ number, owner }: { number: string; owner: string }) {
  const { data, isError } = useQuery(repairQuery(number))
  if (isError) return <TakeInPage start={{ name: owner }} />
  if (!data) return null
  const { repair, clock, warranty } = data
  const start = {
    name: data.owner.name,
    known: { id: data.owner.id, name: data.owner.name },
    knownClock: { id: clock.id, form: clock.form },
    comebackOf: repair.id,
    covered: warranty.cover?.covered ?? false,
  }
  return <TakeInPage start={start} />
}

/** Throws the draft away and begins a blank page. */
function useClear() {
  const [, navigate] = useLocation()
  const { key, ending } = useDraft()
  const cache = useQueryClient()
  return async () => {
    await ending(() => answer(api.drafts[':key'].drop.$put({ param: { key } })))
    void cache.invalidateQueries({ queryKey: ['drafts'] })
    navigate(placeOf('', crypto.randomUUID()), { replace: true })
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
    (input: ReturnType<typeof takeInInput>) =>
      draft.ending(() => answer(api.counter.takeIn.$post({ json: input }))),
    {
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
