import { minor, minorText } from '../../../core/money/minor.ts'
import type { PaymentMethod } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../../parts/field.tsx'
import { useSaidPaper } from '../../parts/paper-link.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Gives back what the shop holds of the owner's money. */
export function Refund({ view, close }: ActProps) {
  const { words, settings } = useShop()
  const said = useSaidPaper()
  const { refundForm, payForm } = words.repair
  const { currency } = settings.place
  const entry = useEntry({
    amount: minorText(minor(view.money.heldMinor), currency),
    method: 'card' as PaymentMethod,
    reference: '',
  })
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.accounts.refund.$post>[0]['json']) =>
      answer(ledger.accounts.refund.$post({ json: input })),
    {
      said: ({ number }) => refundForm.said(number),
      confirm: input => ({
        title: refundForm.ask,
        body: <p>{payForm.asked(`${input.amount} ${currency}`, words.paymentMethods[input.method])}</p>,
        yesWords: refundForm.send,
      }),
      paper: ({ receiptId, number }) => said('receipt', receiptId, number),
      after: close,
    },
  )
  return (
    <ActPanel
      title={refundForm.title}
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      send={refundForm.send}
      close={close}
    >
      <div className="fields form">
        <DecimalField label={payForm.amount} unit={currency} {...entry.at('amount')} />
        <Choice label={payForm.method} choices={words.paymentMethods} {...entry.at('method')} />
        <TextField label={payForm.reference} {...entry.at('reference')} />
      </div>
    </ActPanel>
  )
}
