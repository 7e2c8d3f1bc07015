import '../estimate/estimate.css'
import type { Minor } from '../../../core/money/minor.ts'
import type { Way } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { AnswerFields } from '../estimate/answer-fields.tsx'
import { useAnswers } from '../estimate/answers.ts'
import { type ActProps, estimateTitle, type Repair } from '../repair.ts'

type Input = Parameters<typeof api.estimates.recordWord.$post>[0]['json']

/** Records what the owner said to the last estimate sent: on each clock that stands on it, who, how, and up to what sum. */
export function RecordWord(props: ActProps) {
  const estimate = props.view.estimates.filter(({ sentAt }) => sentAt !== null).at(-1)
  return estimate ? <WordOn estimate={estimate} {...props} /> : null
}

function WordOn({ view, close, estimate }: ActProps & { estimate: Repair['estimates'][number] }) {
  const { words, formats } = useShop()
  const { repair } = words
  const { wordForm } = repair
  const answers = useAnswers(estimate.together, view.repair.id)
  const entry = useEntry({ who: view.owner.name, way: 'telephone' as Way, remark: '' })
  const act = useAskedAct(
    (ledger, input: Input) => answer(ledger.estimates.recordWord.$post({ json: input })),
    {
      said: (_, input) => wordForm.said[input.answer],
      confirm: (input, { limitMinor, others }) => {
        const limits = [limitMinor, ...others.map(one => one.limitMinor)]
        const said = [input, ...(input.others ?? [])].map((one, i) => ({
          answer: one.answer,
          repairNumber: answers.answered[i]?.repairNumber ?? view.repair.number,
          limitMinor: limits[i] ?? null,
        }))
        return { title: wordForm.ask, body: <Asked said={said} />, yesWords: wordForm.send }
      },
      after: close,
    },
  )
  const input = (): Input => {
    const [own, ...others] = answers.sent
    if (!own) throw new Error('no repair to answer for')
    return { ...own, ...entry.value, others }
  }
  const whole = estimate.together.length > 1 && wordForm.comesTo(formats.money(estimate.togetherMinor))
  return (
    <ActPanel title={wordForm.title} act={act} input={input} send={wordForm.send} close={close}>
      <p>
        {wordForm.on} {estimateTitle(words, estimate)}
        {estimate.validUntil && `, ${repair.validUntil(formats.date(estimate.validUntil))}`}. {whole}
      </p>
      {answers.asked.map(one => (
        <AnswerFields
          key={one.estimateId}
          one={one}
          alone={answers.asked.length === 1}
          own={one.repairId === view.repair.id}
          path={answers.path(one)}
          typed={answers.of(one)}
          onChange={typed => answers.set(one, typed)}
        />
      ))}
      <div className="fields form">
        <TextField label={wordForm.who} {...entry.at('who')} />
        <Choice label={wordForm.way} choices={words.ways} {...entry.at('way')} />
        <TextField label={wordForm.remark} {...entry.at('remark')} />
      </div>
    </ActPanel>
  )
}

interface AskedProps {
  readonly said: readonly {
    readonly answer: 'go-ahead' | 'declined'
    readonly repairNumber: number
    readonly limitMinor: Minor | null
  }[]
}

/** What each answer means, repair by repair. */
function Asked({ said }: AskedProps) {
  const { words, formats } = useShop()
  const { wordForm } = words.repair
  return said.map(({ answer: one, repairNumber, limitMinor }) => (
    <p key={repairNumber}>
      {one === 'declined' || limitMinor === null
        ? wordForm.asked.declined(repairNumber)
        : wordForm.asked['go-ahead'](repairNumber, formats.money(limitMinor))}
    </p>
  ))
}
