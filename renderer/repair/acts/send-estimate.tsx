import type { Way } from '../../../core/vocabulary/work.ts'
import { answer } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice } from '../../parts/field.tsx'
import { usePrintPaper } from '../../parts/paper-link.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { Quoted } from '../estimate/quoted.tsx'
import { type ActProps, estimateTitle, lastEstimate } from '../repair.ts'

/** Sends the estimate: from then on it stays as it is. */
export function SendEstimate({ view, close }: ActProps) {
  const { words, formats } = useShop()
  const { sendForm } = words.repair
  const print = usePrintPaper()
  const estimate = lastEstimate(view)
  const entry = useEntry({ way: 'in-person' as Way })
  const act = useAskedAct(
    (ledger, input: { estimateId: number; way: Way }) => answer(ledger.estimates.send.$post({ json: input })),
    {
      said: ({ number }) => sendForm.said(number),
      confirm: () => ({
        title: sendForm.ask(estimate?.number ?? ''),
        body: estimate && (
          <>
            {estimate.together.length > 1 && <p>{sendForm.several(estimate.together.length)}</p>}
            <p>{sendForm.asked(formats.money(estimate.togetherMinor))}</p>
          </>
        ),
        yesWords: sendForm.send,
      }),
      after: ({ documentId }) => {
        close()
        if (entry.value.way === 'in-person' || entry.value.way === 'letter') void print(documentId)
      },
    },
  )
  if (!estimate) return null
  return (
    <ActPanel
      title={sendForm.title}
      act={act}
      input={() => ({ estimateId: estimate.id, ...entry.value })}
      send={sendForm.send}
      close={close}
    >
      <p>
        {estimateTitle(words, estimate)} {words.repair.comesTo(formats.money(estimate.togetherMinor))}
      </p>
      <Quoted view={view} totalMinor={estimate.totalMinor} highMinor={estimate.highMinor} />
      <Choice label={sendForm.way} choices={words.ways} {...entry.at('way')} />
    </ActPanel>
  )
}
