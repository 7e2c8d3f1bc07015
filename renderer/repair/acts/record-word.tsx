import type { Way } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DecimalField, FewChoice, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

type Word = 'go-ahead' | 'declined'

/** Records what the owner said to the last estimate sent: who, how, and up to what sum. */
export function RecordWord({ view, close }: ActProps) {
  const { words, settings } = useShop()
  const { repair } = words
  const { wordForm } = repair
  const estimate = view.estimates.filter(({ sentAt }) => sentAt !== null).at(-1)
  const entry = useEntry({
    answer: 'go-ahead' as Word,
    who: view.owner.name,
    way: 'telephone' as Way,
    limit: '',
    remark: '',
  })
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.estimates.recordWord.$post>[0]['json']) =>
      answer(ledger.estimates.recordWord.$post({ json: input })),
    {
      said: (_, input) => wordForm.said[input.answer],
      confirm: input => ({
        title: wordForm.ask,
        body: <p>{wordForm.asked[input.answer]}</p>,
        yesWords: wordForm.send,
      }),
      after: close,
    },
  )
  if (!estimate) return null
  const input = () => ({ ...entry.value, estimateId: estimate.id, limit: entry.value.limit.trim() || null })
  return (
    <ActPanel title={wordForm.title} act={act} input={input} send={wordForm.send} close={close}>
      <p>
        {wordForm.on} {repair.version(estimate.version, estimate.supplement)}
      </p>
      <FewChoice label={wordForm.answer} choices={repair.answers} {...entry.at('answer')} />
      <div className="fields form">
        <TextField label={wordForm.who} {...entry.at('who')} />
        <Choice label={wordForm.way} choices={words.ways} {...entry.at('way')} />
        {entry.value.answer === 'go-ahead' && (
          <DecimalField
            label={wordForm.limit}
            hint={wordForm.limitHint}
            unit={settings.place.currency}
            {...entry.at('limit')}
          />
        )}
        <TextField label={wordForm.remark} {...entry.at('remark')} />
      </div>
    </ActPanel>
  )
}
