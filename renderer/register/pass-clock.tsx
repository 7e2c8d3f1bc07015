import { type ReactNode, useState } from 'react'
import { Link } from 'wouter'
import { answer, type api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { useSeenAs } from '../parts/seen.ts'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import { ChooseOwner, ChoosePanel, type ChosenOwner } from './choose-owner.tsx'
import type { ClockProps, ClockView } from './clock.ts'

/** A running warranty that says it does not go over to another owner. */
const endsByPassing = ({ visits }: ClockView) =>
  visits.some(({ cover, warranty }) => cover?.covered && warranty?.exclusions.includes('not-transferable'))

/** Records that the clock belongs to someone else from today on: first the new owner is found, then it is asked. */
export function PassClock(props: ClockProps) {
  const { passForm } = useShop().words.register
  const [to, setTo] = useState<ChosenOwner | null>(null)
  const chooser = (
    <>
      <p className="quiet">{passForm.advice}</p>
      {endsByPassing(props.view) && <p className="note">{passForm.exclusion}</p>}
      <ChooseOwner name="ownerId" label={passForm.to} hint={passForm.toHint} chosen={to} onChoose={setTo} />
    </>
  )
  if (to)
    return (
      <Pass {...props} to={to}>
        {chooser}
      </Pass>
    )
  return (
    <ChoosePanel title={passForm.title} close={props.close}>
      {chooser}
      <p className="quiet">
        {passForm.notThere} <Link href="/register/new-owner">{passForm.enter}</Link>
      </p>
    </ChoosePanel>
  )
}

function Pass({ view, close, to, children }: ClockProps & { to: ChosenOwner; children: ReactNode }) {
  const { register } = useShop().words
  const { passForm } = register
  const now = view.owners.find(({ untilAt }) => untilAt === null)
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.register.passClock.$post>[0]['json']) =>
      answer(ledger.register.passClock.$post({ json })),
    {
      said: () => passForm.said(to.name),
      after: close,
      confirm: () => ({
        title: passForm.ask(to.name),
        body: <p>{passForm.asked(now?.name ?? register.clock.noOwner, to.name)}</p>,
        yesWords: passForm.send,
      }),
    },
  )
  const seen = useSeenAs(now?.ownerId, act.problems)
  return (
    <ActPanel
      title={passForm.title}
      act={act}
      input={() => ({
        clockId: view.clock.id,
        ownerId: to.id,
        seen: seen === undefined ? null : { ownerId: seen },
      })}
      send={passForm.send}
      close={close}
    >
      {children}
    </ActPanel>
  )
}
