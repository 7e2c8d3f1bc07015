import './cover.css'
import type { Exclusion } from '../../core/vocabulary/work.ts'
import type { Cover } from '../../core/warranty/cover.ts'
import { Tick } from '../parts/field.tsx'
import { More } from '../parts/pane.tsx'
import { useShop } from '../shop.tsx'
import { coverReason } from './clock.ts'

/** A change of owner is on record and not asked for. */
const askedFor = (exclusions: readonly Exclusion[]) =>
  exclusions.filter(cause => cause !== 'not-transferable')

interface Props {
  /** Of the repair it comes back from. */
  readonly number: number
  /** What that repair's warranty says of the day the clock came in, whatever the fault comes from; null where none was given. */
  readonly cover: Pick<Cover, 'covered' | 'reasons'> | null
  /** What that warranty leaves out. */
  readonly exclusions: readonly Exclusion[]
  readonly causes: readonly Exclusion[]
  readonly covered: boolean
  /** The causes ticked, and whether it is covered. */
  readonly onChange: (causes: readonly Exclusion[], covered: boolean) => void
}

/** Whether a comeback falls under the warranty it comes back on: every reason, what that warranty leaves out to be ticked, and the shop's word. */
export function ComebackCover({ number, cover, exclusions, causes, covered, onChange }: Props) {
  const { words, formats } = useShop()
  const { comebackCover: said, clock } = words.register
  if (!cover) return <p className="quiet">{said.none(number)}</p>
  const mayBe = cover.covered && causes.length === 0
  const excluded = causes.map(cause => ({ code: 'excluded' as const, values: { cause } }))
  return (
    <div className="cover">
      <ul className="reasons" aria-label={clock.why}>
        {[...cover.reasons, ...excluded].map(reason => (
          <li key={`${reason.code} ${reason.values.cause}`}>{coverReason(words, formats, reason)}</li>
        ))}
      </ul>
      {mayBe ? (
        <Tick
          name="covered"
          label={said.covered(number)}
          value={covered}
          onChange={yes => onChange(causes, yes)}
        />
      ) : (
        <p className="cover-answer not">{said.notCovered(number)}</p>
      )}
      {cover.covered && exclusions.length > 0 && (
        <More label={said.causes}>
          <fieldset className="causes">
            <legend>{said.causesAsked}</legend>
            {askedFor(exclusions).map(cause => (
              <Tick
                key={cause}
                name={`cause ${cause}`}
                label={words.exclusions[cause]}
                value={causes.includes(cause)}
                onChange={yes => {
                  const now = yes ? [...causes, cause] : causes.filter(one => one !== cause)
                  onChange(now, now.length === 0)
                }}
              />
            ))}
          </fieldset>
        </More>
      )}
    </div>
  )
}
