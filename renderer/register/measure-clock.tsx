import type { ClockSize } from '../../core/measures/measures.ts'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { DecimalField } from '../parts/field.tsx'
import { BoxFields, useMeasures } from '../parts/measures.tsx'
import { Opened, OpenForm } from '../parts/opened.tsx'
import { useSeen } from '../parts/seen.ts'
import { ActPanel } from '../repair/act-panel.tsx'
import { useShop } from '../shop.tsx'
import type { ClockProps } from './clock.ts'

type Measured = ClockSize & { readonly id: number }
type Measure = Parameters<typeof api.register.measureClock.$post>[0]['json']

/** A clock's size as it is typed in what the shop measures in, and the act that writes it down. */
function useMeasure(clock: Measured, close: () => void) {
  const { measures } = useShop().words
  const { typedBox, typedWeight, writtenBox, writtenWeight } = useMeasures()
  const now = { ...typedBox(clock), weightG: typedWeight(clock.weightG) }
  const entry = useEntry(now)
  const act = useAct((json: Measure) => answer(api.register.measureClock.$post({ json })), {
    said: () => measures.said,
    after: close,
  })
  const seen = useSeen(entry, now, act.problems)
  const written = (size: typeof now) => ({ ...writtenBox(size), weightG: writtenWeight(size.weightG) })
  return { entry, act, input: () => ({ clockId: clock.id, ...written(entry.value), seen: written(seen) }) }
}

function SizeFields({ entry }: Pick<ReturnType<typeof useMeasure>, 'entry'>) {
  const { measures } = useShop().words
  const { weight } = useMeasures()
  return (
    <>
      <p className="quiet">{measures.advice}</p>
      <div className="fields">
        <BoxFields entry={entry} />
        <DecimalField
          label={measures.weight}
          unit={weight}
          hint={measures.weightHint}
          {...entry.at('weightG')}
        />
      </div>
    </>
  )
}

/** Writes down how large and heavy a clock is, on its page. */
export function MeasureClock({ view: { clock }, close }: ClockProps) {
  const { measures } = useShop().words
  const { entry, ...form } = useMeasure(clock, close)
  return (
    <ActPanel title={measures.title} send={measures.send} close={close} {...form}>
      <SizeFields entry={entry} />
    </ActPanel>
  )
}

/** The same, behind a button where a place is chosen for the clock. */
export function MeasureHere({ clock }: { clock: Measured }) {
  const { measures } = useShop().words
  return <Opened label={measures.open}>{close => <MeasureForm clock={clock} close={close} />}</Opened>
}

function MeasureForm({ clock, close }: { clock: Measured; close: () => void }) {
  const { measures } = useShop().words
  const { entry, ...form } = useMeasure(clock, close)
  return (
    <OpenForm label={measures.title} send={measures.send} close={close} {...form}>
      <SizeFields entry={entry} />
    </OpenForm>
  )
}
