import { minor, minorText } from '../../../core/money/minor.ts'
import type { PaymentMethod } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DecimalField, TextField } from '../../parts/field.tsx'
import { useSaidPaper } from '../../parts/paper-link.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { type ActProps, dueMinor } from '../repair.ts'

/** Takes a payment, or a deposit while nothing is billed yet. It starts from what is due. */
export function Pay({ view, close }: ActProps) {
  const { words, formats, settings } = useShop()
  const said = useSaidPaper()
  const { payForm } = words.repair
  const { currency } = settings.place
  const due = dueMinor(view)
  const entry = useEntry({
    amount: due > 0 ? minorText(minor(due), currency) : '',
    method: 'card' as PaymentMethod,
    reference: '',
    tendered: '',
  })
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.accounts.pay.$post>[0]['json']) =>
      answer(ledger.accounts.pay.$post({ json: input })),
    {
      said: ({ number, dueMinor: left }) => payForm.said(number, formats.money(minor(Math.max(left, 0)))),
      confirm: input => ({
        title: payForm.ask,
        body: <p>{payForm.asked(`${input.amount} ${currency}`, words.paymentMethods[input.method])}</p>,
        yesWords: payForm.send,
      }),
      paper: ({ receiptId, number }) => said('receipt', receiptId, number),
      after: close,
    },
  )
  const cash = entry.value.method === 'cash'
  const input = () => ({
    ...entry.value,
    repairId: view.repair.id,
    tendered: (cash && entry.value.tendered.trim()) || null,
  })
  return (
    <ActPanel
      title={view.money.balance.billed === 0 ? payForm.depositTitle : payForm.title}
      act={act}
      input={input}
      send={payForm.send}
      close={close}
    >
      <div className="fields form">
        <DecimalField label={payForm.amount} unit={currency} {...entry.at('amount')} />
        <Choice label={payForm.method} choices={words.paymentMethods} {...entry.at('method')} />
        {cash && (
          <DecimalField
            label={payForm.tendered}
            hint={payForm.tenderedHint}
            unit={currency}
            {...entry.at('tendered')}
          />
        )}
        <TextField label={payForm.reference} {...entry.at('reference')} />
      </div>
    </ActPanel>
  )
}
