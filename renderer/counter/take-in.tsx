import { useLocation, useSearchParams } from 'wouter'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { MarginDay } from '../parts/figures.tsx'
import { EntryLine, Page } from '../parts/page.tsx'
import { usePrintPaper } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'
import { BelongingsSection } from './take-in-belongings.tsx'
import { ClockSection } from './take-in-clock.tsx'
import { ConditionSection } from './take-in-condition.tsx'
import { takeInInput, useTakeIn } from './take-in-entry.ts'
import { OwnerSection } from './take-in-owner.tsx'
import { CostSection, FaultSection, SignatureSection } from './take-in-rest.tsx'

/** Taking a clock in, on one page, in the order things are said and laid on the counter. */
export function TakeIn() {
  const { words, today } = useShop()
  const { takeIn } = words.counter
  const [asked] = useSearchParams()
  const [, navigate] = useLocation()
  const print = usePrintPaper()
  const entry = useTakeIn(asked.get('owner') ?? '')
  const act = useAct(
    (input: ReturnType<typeof takeInInput>) => answer(api.counter.takeIn.$post({ json: input })),
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
