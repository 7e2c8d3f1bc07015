import { useLocation } from 'wouter'
import { type Minor, minor, minorText } from '../../core/money/minor.ts'
import type { moneyMethods } from '../../core/vocabulary/work.ts'
import { answer, type api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../parts/field.tsx'
import { OpenForm } from '../parts/opened.tsx'
import { withReceipt } from '../repair/taken.tsx'
import { useShop } from '../shop.tsx'

interface PayBackProps {
  readonly ownerId: number
  readonly heldMinor: Minor
  readonly close: () => void
}

/** Pays out what is held on an owner's account. */
export function PayBack({ ownerId, heldMinor, close }: PayBackProps) {
  const { words, formats, settings, today } = useShop()
  const { payForm, refundForm } = words.repair
  const { ownerAccount } = words.accounts
  const { currency } = settings.place
  const [, navigate] = useLocation()
  const entry = useEntry({
    amount: minorText(heldMinor, currency),
    method: 'transfer' as (typeof moneyMethods)[number],
    reference: '',
    onDate: today,
  })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.payBack.$post>[0]['json']) =>
      answer(ledger.accounts.payBack.$post({ json })),
    {
      said: ({ number }) => refundForm.said(number),
      confirm: ({ method }, { amountMinor }) => ({
        title: refundForm.ask,
        body: <p>{payForm.asked(formats.money(minor(-amountMinor)), words.paymentMethods[method])}</p>,
        yesWords: refundForm.send,
      }),
      after: ({ receiptId }) => {
        close()
        navigate(withReceipt(`/accounts/owner/${ownerId}`, receiptId))
      },
    },
  )
  const { account: _, ...methods } = words.paymentMethods
  return (
    <OpenForm
      reserved="accounts.payBack"
      act={act}
      input={() => ({ ...entry.value, ownerId, onDate: entry.value.onDate || null })}
      label={ownerAccount.payBack}
      send={refundForm.send}
      close={close}
    >
      <div className="fields form">
        <DecimalField label={payForm.amount} unit={currency} {...entry.at('amount')} />
        <Choice label={refundForm.method} choices={methods} {...entry.at('method')} />
        <DateField label={payForm.onDate} {...entry.at('onDate')} />
        <TextField label={payForm.reference} {...entry.at('reference')} />
      </div>
    </OpenForm>
  )
}
