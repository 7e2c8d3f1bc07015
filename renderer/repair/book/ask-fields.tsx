import { works } from '../../../core/vocabulary/work.ts'
import type { EntryState } from '../../parts/entry.ts'
import { Choice, DecimalField, TextField, Tick } from '../../parts/field.tsx'
import { partWords } from '../../parts/part-words.ts'
import { useShop } from '../../shop.tsx'
import type { Repair } from '../repair.ts'
import { knownWorks, type TypedAsk } from './ask.ts'
import type { useParts } from './use-book.ts'

interface AskFieldsProps {
  readonly view: Repair
  readonly entry: EntryState<TypedAsk>
  readonly parts: NonNullable<ReturnType<typeof useParts>>
}

/** The fields that belong to what is asked. */
export function AskFields(props: AskFieldsProps) {
  switch (props.entry.value.from) {
    case 'labour':
      return <LabourFields {...props} />
    case 'part':
      return <PartFields {...props} />
    case 'outside':
      return <OutsideFields {...props} />
    case 'call-out':
      return <CallOutFields {...props} />
    default:
      return null
  }
}

function LabourFields({ view: { clock }, entry }: AskFieldsProps) {
  const { words, settings } = useShop()
  const { priceBook, screens } = words
  const known = knownWorks(settings.prices, clock)
  if (known.length === 0) return <p className="quiet">{priceBook.noHours}</p>
  return (
    <>
      <Choice
        label={priceBook.work}
        choices={Object.fromEntries(known.map(work => [work, words.lineWorks[work]]))}
        empty={screens.form.choose}
        {...entry.at('work')}
      />
      <DecimalField label={priceBook.furtherHours} {...entry.at('furtherHours')} />
      <Tick label={priceBook.rush} {...entry.at('rush')} />
    </>
  )
}

function PartFields({ entry, parts }: AskFieldsProps) {
  const { words } = useShop()
  const { priceBook, screens } = words
  if (parts.length === 0) return <p className="quiet">{priceBook.noParts}</p>
  return (
    <>
      <Choice
        label={priceBook.part}
        choices={Object.fromEntries(parts.map(part => [String(part.id), partWords(words, part)]))}
        empty={screens.form.choose}
        {...entry.at('partId')}
      />
      <TextField label={priceBook.pieces} inputMode="numeric" {...entry.at('pieces')} />
      <Choice label={priceBook.by} choices={priceBook.bys} {...entry.at('by')} />
    </>
  )
}

function OutsideFields({ entry }: AskFieldsProps) {
  const { words, settings } = useShop()
  const { priceBook } = words
  return (
    <>
      <Choice
        label={priceBook.work}
        choices={Object.fromEntries(works.map(work => [work, words.lineWorks[work]]))}
        empty={priceBook.noWork}
        {...entry.at('outsideWork')}
      />
      <DecimalField label={priceBook.cost} unit={settings.place.currency} {...entry.at('cost')} />
    </>
  )
}

function CallOutFields({ entry }: AskFieldsProps) {
  const { priceBook } = useShop().words
  return (
    <>
      <DecimalField label={priceBook.distance} {...entry.at('distance')} />
      <TextField label={priceBook.clocks} inputMode="numeric" {...entry.at('clocks')} />
    </>
  )
}
