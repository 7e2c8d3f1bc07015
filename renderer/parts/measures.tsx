import {
  type Box,
  type MeasureUnit,
  measureIn,
  sides,
  weightUnit,
  wholeOf,
} from '../../core/measures/measures.ts'
import { useShop } from '../shop.tsx'
import type { EntryState } from './entry.ts'
import { DecimalField } from './field.tsx'
import { numberOrNull } from './typed.ts'

type Typed<T> = { readonly [K in keyof T]: string }

/** What the shop measures and weighs in, and how a measure on record is typed, written and said in it. */
export function useMeasures() {
  const { settings, words, formats } = useShop()
  const length = settings.place.units
  const weight = weightUnit[length]
  const typed = (whole: number | null, unit: MeasureUnit) =>
    whole === null ? '' : String(measureIn(whole, unit))
  const written = (text: string, unit: MeasureUnit) => {
    const value = numberOrNull(text)
    return value === null ? null : wholeOf(value, unit)
  }
  const said = (whole: number, unit: MeasureUnit) => `${formats.number(measureIn(whole, unit))} ${unit}`
  return {
    length,
    weight,
    typedBox: (box: Box): Typed<Box> => ({
      heightMm: typed(box.heightMm, length),
      widthMm: typed(box.widthMm, length),
      depthMm: typed(box.depthMm, length),
    }),
    writtenBox: (box: Typed<Box>): Box => ({
      heightMm: written(box.heightMm, length),
      widthMm: written(box.widthMm, length),
      depthMm: written(box.depthMm, length),
    }),
    typedWeight: (grams: number | null) => typed(grams, weight),
    writtenWeight: (text: string) => written(text, weight),
    /** The sides that are known: `12.5 in high × 9 in wide`; '' where none is. */
    saidBox: (box: Box): string =>
      sides
        .flatMap(side => {
          const whole = box[side]
          return whole === null ? [] : [words.measures.side[side](said(whole, length))]
        })
        .join(' × '),
    /** A weight: `2.4 kg`; '' where it is not known. */
    saidWeight: (grams: number | null): string => (grams === null ? '' : said(grams, weight)),
  }
}

/** Height, width and depth, in what the shop measures in. */
export function BoxFields<T extends Typed<Box>>({ entry }: { entry: EntryState<T> }) {
  const { names } = useShop().words.measures
  const { length } = useMeasures()
  return sides.map(side => <DecimalField key={side} label={names[side]} unit={length} {...entry.at(side)} />)
}
