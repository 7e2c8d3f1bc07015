import { useState } from 'react'
import { useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { MarginDay } from '../parts/figures.tsx'
import { forgetKept } from '../parts/kept.ts'
import { EntryLine, Page } from '../parts/page.tsx'
import { usePrintPaper } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { BelongingsSection } from './take-in-belongings.tsx'
import { ClockSection } from './take-in-clock.tsx'
import { ConditionSection } from './take-in-condition.tsx'
import { takeInInput, takeInKept, useTakeIn } from './take-in-entry.ts'
import { OwnerSection } from './take-in-owner.tsx'
import { CostSection, FaultSection, SignatureSection } from './take-in-rest.tsx'

/** Taking a clock in. What is typed waits under the owner it was begun with until it is sent or cleared. */
export function TakeIn() {
  const [asked] = useSearchParams()
  const [clearings, setClearings] = useState(0)
  const owner = asked.get('owner') ?? ''
  const clear = () => {
    forgetKept(takeInKept(owner))
    setClearings(clearings + 1)
  }
  return <TakeInPage key={`${owner} ${clearings}`} owner={owner} onClear={clear} />
}

/** One page, in the order things are said and laid on the counter. */
function TakeInPage({ owner, onClear }: { owner: string; onClear: () => void }) {
  const { words, today } = useShop()
  const { takeIn } = words.counter
  const [, navigate] = useLocation()
  const print = usePrintPaper()
  const entry = useTakeIn(owner)
  const act = useAct(
    (input: ReturnType<typeof takeInInput>) => answer(api.counter.takeIn.$post({ json: input })),
    {
      said: ({ number }) => takeIn.said(number),
      after: ({ number, claimCheckId }) => {
        navigate(`/counter/${number}`)
        forgetKept(takeInKept(owner))
        void print(claimCheckId)
      },
    },
  )
  return (
    <ActForm
      act={act}
      input={() => takeInInput(entry)}
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
                <button type="button" className="plain" onClick={onClear}>
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
