import type { LineLeft } from '../../core/accounts/lines-left.ts'
import { DecimalField } from '../parts/field.tsx'
import { Figure, Money } from '../parts/figures.tsx'
import { useShop } from '../shop.tsx'

/** What is typed beside one line of the invoice. */
export interface TypedCredit {
  readonly quantity: string
  readonly amount: string
}

const nothing: TypedCredit = { quantity: '', amount: '' }

/** What is typed, by the line's place. */
export type TypedCredits = Readonly<Record<number, TypedCredit>>

/** The lines of which something is credited, as they are sent: in their order, each once. */
export const writtenCredits = (typed: TypedCredits) =>
  Object.entries(typed)
    .map(([line, { quantity, amount }]) => ({
      line: Number(line),
      quantity: quantity.trim() || null,
      amount: amount.trim() || null,
    }))
    .filter(({ quantity, amount }) => quantity !== null || amount !== null)

interface CreditLinesProps {
  readonly lines: readonly { readonly description: string }[]
  readonly left: readonly LineLeft[]
  readonly inclusive: boolean
  readonly typed: TypedCredits
  readonly onType: (typed: TypedCredits) => void
}

/** The lines of an invoice with what is left of each, to say how many or how much of it is credited. */
export function CreditLines({ lines, left, inclusive, typed, onType }: CreditLinesProps) {
  const { creditForm } = useShop().words.accounts
  const sent = writtenCredits(typed)
  const open = left.flatMap((one, line) => (one.amount === 0 ? [] : [{ ...one, line }]))
  return (
    <div className="credit-lines">
      <p className="quiet">{creditForm.amountHint[inclusive ? 'inclusive' : 'exclusive']}</p>
      {open.map(one => {
        const own = typed[one.line] ?? nothing
        const place = sent.findIndex(({ line }) => line === one.line)
        const at = (key: keyof TypedCredit) => ({
          name: place < 0 ? `line ${one.line} ${key}` : `lines[${place}].${key}`,
          value: own[key],
          onChange: (value: string) => onType({ ...typed, [one.line]: { ...own, [key]: value } }),
        })
        return (
          <fieldset key={one.line} className="line-fields credit-line">
            <legend>
              {lines[one.line]?.description}{' '}
              <small className="quiet">
                {creditForm.left}: <Figure value={one.quantity} /> · <Money minor={one.amount} />
              </small>
            </legend>
            <DecimalField label={creditForm.quantity} {...at('quantity')} />
            <DecimalField label={creditForm.amount} {...at('amount')} />
          </fieldset>
        )
      })}
    </div>
  )
}
