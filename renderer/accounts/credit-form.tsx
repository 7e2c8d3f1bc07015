import { useState } from 'react'
import { useLocation } from 'wouter'
import { minor } from '../../core/money/minor.ts'
import { answer, type api } from '../api.ts'
import { useAskedAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { DateField, FewChoice, TextField } from '../parts/field.tsx'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import { CreditLines, type TypedCredits, writtenCredits } from './credit-lines.tsx'
import type { PaperView } from './paper.ts'

type Credit = Parameters<typeof api.accounts.credit.$post>[0]['json']

/** The act of crediting the paper, asked about with what it comes to; leads to the credit note. */
function useCredit({ paper }: PaperView) {
  const { words, formats } = useShop()
  const { creditForm } = words.accounts
  const [, navigate] = useLocation()
  const credited = (amount: number) => formats.money(minor(-amount))
  return useAskedAct((ledger, json: Credit) => answer(ledger.accounts.credit.$post({ json })), {
    said: ({ number, totalMinor }) => creditForm.said(number, credited(totalMinor)),
    after: ({ id }) => navigate(`/accounts/paper/${id}`),
    confirm: (_, { totalMinor }) => ({
      title: creditForm.ask(paper.number),
      body: <p>{creditForm.asked(credited(totalMinor))}</p>,
      yesWords: creditForm.send,
    }),
  })
}

/** Credits an invoice, whole or in part, with a reason and after a question. */
export function CreditInvoice({ view, close }: { view: PaperView; close: () => void }) {
  const { words, today } = useShop()
  const { creditForm } = words.accounts
  const { paper, contents, creditable } = view
  const entry = useEntry({ what: 'all' as keyof typeof creditForm.whats, reason: '', issuedOn: today })
  const [typed, setTyped] = useState<TypedCredits>({})
  const { what, reason, issuedOn } = entry.value
  const act = useCredit(view)
  const input = () => ({
    invoiceId: paper.id,
    reason,
    issuedOn: issuedOn || null,
    lines: what === 'all' ? null : writtenCredits(typed),
  })
  return (
    <ActPanel
      reserved="accounts.credit"
      title={creditForm.title}
      act={act}
      input={input}
      send={creditForm.send}
      close={close}
    >
      <p className="quiet">{creditForm.advice}</p>
      <FewChoice label={creditForm.what} choices={creditForm.whats} {...entry.at('what')} />
      {what === 'some' && contents.kind === 'invoice' && creditable && (
        <CreditLines
          lines={contents.lines}
          left={creditable}
          inclusive={contents.tax.inclusive}
          typed={typed}
          onType={setTyped}
        />
      )}
      <div className="fields form">
        <TextField label={creditForm.reason} hint={creditForm.reasonHint} {...entry.at('reason')} />
        <DateField label={creditForm.issuedOn} {...entry.at('issuedOn')} />
      </div>
    </ActPanel>
  )
}
