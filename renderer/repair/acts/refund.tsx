import { useLocation } from 'wouter'
import { minor, minorText } from '../../../core/money/minor.ts'
import type { PaymentMethod } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'
import { withReceipt } from '../taken.tsx'

/** Gives back what the shop holds of the owner's money on this repair, or takes it over to the owner's account. */
export function Refund({ view, close, place }: ActProps) {
  const { words, formats, settings, today } = useShop()
  const { refundForm, payForm } = words.repair
  const { currency } = settings.place
  const [, navigate] = useLocation()
  const entry = useEntry({
    amount: minorText(minor(view.money.heldMinor), currency),
    method: 'card' as PaymentMethod,
    reference: '',
    onDate: today,
  })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.refund.$post>[0]['json']) =>
      answer(ledger.accounts.refund.$post({ json })),
    {
      said: ({ number }) => refundForm.said(number),
      confirm: ({ method }, { amountMinor }) => ({
        title: refundForm.ask,
        body: <p>{payForm.asked(formats.money(minor(-amountMinor)), words.paymentMethods[method])}</p>,
        yesWords: refundForm.send,
      }),
      after: ({ receiptId }) => navigate(withReceipt(place, receiptId)),
    },
  )
  return (
    <ActPanel
      reserved="accounts.refund"
      title={refundForm.title}
      act={act}
      input={() => ({ ...entry.value, repairId: view.repair.id, onDate: entry.value.onDate || null })}
      send={refundForm.send}
      close={close}
    >
      <div className="fields form">
        <DecimalField label={payForm.amount} unit={currency} {...entry.at('amount')} />
        <Choice
          label={refundForm.method}
          hint={refundForm.hint}
          choices={words.paymentMethods}
          {...entry.at('method')}
        />
        <DateField label={payForm.onDate} {...entry.at('onDate')} />
        <TextField label={payForm.reference} {...entry.at('reference')} />
      </div>
    </ActPanel>
  )
}
