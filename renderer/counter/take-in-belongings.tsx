import { type ExpectedBelonging, expectedBelongings } from '../../core/vocabulary/expected-belongings.ts'
import { belongingWords } from '../clock-words.ts'
import { Choice, FewChoice, TextField } from '../parts/field.tsx'
import { Section } from '../parts/page.tsx'
import { RemoveLine } from '../parts/remove-line.tsx'
import { useShop } from '../shop.tsx'
import { belongingKey, formOf, type TakeInEntry } from './take-in-entry.ts'

/** What came with the clock: the usual things asked after one by one, then anything else; and how the springs are. */
export function BelongingsSection({ entry }: { entry: TakeInEntry }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  return (
    <Section title={takeIn.belongings} note={takeIn.belongingsNote}>
      <div className="custody-list">
        {expectedBelongings(formOf(entry)).map(expected => (
          <Expected key={belongingKey(expected)} entry={entry} expected={expected} />
        ))}
      </div>
      <RestOfThem entry={entry} />
      <h3>{takeIn.other}</h3>
      <div className="lines">
        {entry.others.lines.map(({ key, blank }, index) => (
          <Other key={key} entry={entry} index={index} blank={blank} />
        ))}
      </div>
      <div className="fields form">
        <Choice label={takeIn.springs} choices={words.springStates} {...entry.rest.at('springs')} />
      </div>
    </Section>
  )
}

/** Says the same of everything that nothing was said of yet: the exceptions are chosen, the rest is one key. */
function RestOfThem({ entry }: { entry: TakeInEntry }) {
  const { words } = useShop()
  const open = expectedBelongings(formOf(entry))
    .map(belongingKey)
    .filter(key => !entry.custodies[key])
  if (open.length === 0) return null
  return (
    <div className="buttons">
      {(['received', 'absent'] as const).map(custody => (
        <button
          key={custody}
          type="button"
          className="second"
          onClick={() => {
            for (const key of open) entry.setCustody(key, custody)
            // The buttons go with the last thing nothing was said of: the cursor goes on to what follows.
            document.querySelector<HTMLElement>('[name="others[0].item"]')?.focus()
          }}
        >
          {words.counter.takeIn.restIs(words.custodies[custody])}
        </button>
      ))}
    </div>
  )
}

/** One thing that usually comes with such a clock; nothing is ticked until something was said of it. */
function Expected({ entry, expected }: { entry: TakeInEntry; expected: ExpectedBelonging }) {
  const { words } = useShop()
  const key = belongingKey(expected)
  return (
    <FewChoice
      name={`expected ${key}`}
      label={belongingWords(words, expected)}
      choices={words.custodies}
      value={entry.custodies[key] ?? null}
      onChange={custody => entry.setCustody(key, custody)}
    />
  )
}

function Other({ entry: { others }, index, blank }: { entry: TakeInEntry; index: number; blank: boolean }) {
  const { words } = useShop()
  const { takeIn } = words.counter
  const hideLabel = index > 0
  return (
    <fieldset className="line-fields other-fields">
      <legend className="hidden-words">{takeIn.belongingOf(index + 1)}</legend>
      <Choice
        label={takeIn.item}
        hideLabel={hideLabel}
        choices={words.belongings}
        empty={takeIn.noComponent}
        {...others.at(index, 'item')}
      />
      <Choice
        label={takeIn.position}
        hideLabel={hideLabel}
        choices={words.positions}
        empty=""
        {...others.at(index, 'position')}
      />
      <TextField label={takeIn.description} hideLabel={hideLabel} {...others.at(index, 'description')} />
      <TextField
        label={takeIn.count}
        hideLabel={hideLabel}
        inputMode="numeric"
        {...others.at(index, 'count')}
      />
      <Choice
        label={takeIn.custody}
        hideLabel={hideLabel}
        choices={words.custodies}
        {...others.at(index, 'custody')}
      />
      {!blank && <RemoveLine what={takeIn.belongingOf(index + 1)} onRemove={() => others.remove(index)} />}
    </fieldset>
  )
}
