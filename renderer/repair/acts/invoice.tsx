import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { DateField, TextArea } from '../../parts/field.tsx'
import { usePrintPaper, useSaidPaper } from '../../parts/paper-link.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { InvoiceLimits, useOrigin, useStartOfInvoice } from '../invoice-start.tsx'
import { LineEditor } from '../line-editor.tsx'
import type { ActProps } from '../repair.ts'
import { sumsOf, useMoneyLines } from '../typed-line.ts'

/** Writes the invoice; it starts from the lines the owner gave the go-ahead on and the parts used within it. */
export function Invoice({ view, close }: ActProps) {
  const shop = useShop()
  const { words, formats } = shop
  const { invoiceForm } = words.repair
  const print = usePrintPaper()
  const said = useSaidPaper()
  const entry = useEntry({ notes: '', issuedOn: shop.today })
  const lines = useMoneyLines(useStartOfInvoice(view))
  const origin = useOrigin(view)
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.accounts.invoice.$post>[0]['json']) =>
      answer(ledger.accounts.invoice.$post({ json: input })),
    {
      said: ({ number, dueMinor }) => invoiceForm.said(number, formats.money(dueMinor)),
      confirm: () => {
        const sums = sumsOf(lines, shop)
        return {
          title: invoiceForm.ask,
          body: sums && <p>{invoiceForm.asked(formats.money(sums.taxInclusive))}</p>,
          yesWords: invoiceForm.send,
        }
      },
      papers: ({ id, number }) => [said('invoice', id, number)],
      after: ({ id }) => {
        close()
        void print(id)
      },
    },
  )
  const input = () => ({
    repairId: view.repair.id,
    lines: lines.written(),
    ...entry.value,
    issuedOn: entry.value.issuedOn || null,
  })
  return (
    <ActPanel
      reserved="accounts.invoice"
      title={invoiceForm.title}
      act={act}
      input={input}
      send={invoiceForm.send}
      close={close}
    >
      <LineEditor view={view} lines={lines} beside={origin} />
      <InvoiceLimits view={view} lines={lines} />
      <DateField label={invoiceForm.issuedOn} {...entry.at('issuedOn')} />
      <TextArea label={invoiceForm.notes} {...entry.at('notes')} />
    </ActPanel>
  )
}
