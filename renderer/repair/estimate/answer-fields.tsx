import { clockWords } from '../../clock-words.ts'
import { DecimalField, FewChoice } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import type { OnEstimate, Said, TypedAnswer } from './answers.ts'

interface AnswerProps {
  readonly one: OnEstimate
  /** It is the only repair that is asked about. */
  readonly alone: boolean
  /** It is the repair being looked at, which is always answered. */
  readonly own: boolean
  readonly path: string
  readonly typed: TypedAnswer
  readonly onChange: (typed: TypedAnswer) => void
}

/** The owner's word on one repair, with what it comes to in sight. */
export function AnswerFields({ one, alone, own, path, typed, onChange }: AnswerProps) {
  const { words, formats, settings } = useShop()
  const { repair } = words
  const { wordForm } = repair
  const { overrunPercent, overrunAmount } = settings.estimate
  const facts = [
    repair.comesTo(formats.money(one.totalMinor)),
    one.highMinor !== null && repair.upTo(formats.money(one.highMinor)),
    one.supplement && one.agreedMinor !== null && wordForm.agreedBefore(formats.money(one.agreedMinor)),
    one.answer && wordForm.before(repair.answers[one.answer]),
  ]
  const choices: Partial<Record<Said, string>> = own
    ? repair.answers
    : { ...repair.answers, '': wordForm.notSaid }
  return (
    <fieldset className={alone ? 'form' : 'joined'}>
      <legend>{repair.title(one.repairNumber, clockWords(words, one.clock))}</legend>
      <p>{facts.filter(Boolean).join(' · ')}</p>
      <FewChoice
        name={`${path}answer`}
        label={wordForm.answer}
        choices={choices as Record<Said, string>}
        value={typed.said}
        onChange={said => onChange({ ...typed, said })}
      />
      {typed.said === 'go-ahead' && (
        <div className="form one-figure">
          <DecimalField
            name={`${path}limit`}
            label={wordForm.limit}
            hint={wordForm.limitHint(
              formats.money(one.limitMinor),
              formats.percent(overrunPercent),
              `${formats.unitPrice(overrunAmount)} ${settings.place.currency}`,
            )}
            unit={settings.place.currency}
            value={typed.limit}
            onChange={limit => onChange({ ...typed, limit })}
          />
        </div>
      )}
    </fieldset>
  )
}
