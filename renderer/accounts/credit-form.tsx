import { useLocation } from 'wouter'
import { answer } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { PaperView } from './paper.ts'

/** Credits an invoice in full, with a reason and after a question; leads to the credit note. */
export function CreditInvoice({ view: { paper }, close }: { view: PaperView; close: () => void }) {
  const { words, formats } = useShop()
  const { creditForm } = words.accounts
  const [, navigate] = useLocation()
  const entry = useEntry({ reason: '' })
  const total = formats.money((paper.totalMinor ?? 0) as Parameters<typeof formats.money>[0])
  const act = useAskedAct(
    (ledger, json: { invoiceId: number; reason: string }) => answer(ledger.accounts.credit.$post({ json })),
    {
      said: ({ number }) => creditForm.said(number),
      after: ({ id }) => navigate(`/accounts/paper/${id}`),
      confirm: () => ({
        title: creditForm.ask(paper.number),
        body: <p>{creditForm.asked(total)}</p>,
        yesWords: creditForm.send,
      }),
    },
  )
  return (
    <ActPanel
      title={creditForm.title}
      act={act}
      input={() => ({ invoiceId: paper.id, ...entry.value })}
      send={creditForm.send}
      close={close}
    >
      <p className="quiet">{creditForm.advice}</p>
      <TextField label={creditForm.reason} hint={creditForm.reasonHint} {...entry.at('reason')} />
    </ActPanel>
  )
}
