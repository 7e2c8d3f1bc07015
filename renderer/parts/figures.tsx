import { type Minor, parseMinor } from '../../core/money/minor.ts'
import { useShop } from '../shop.tsx'

/** An amount in minor units; in columns without the currency's sign, elsewhere with it (`sign`). A dash for null. */
export function Money({ minor, sign = false }: { minor: Minor | number | null | undefined; sign?: boolean }) {
  const { formats, words } = useShop()
  if (minor === null || minor === undefined) return <span className="figure">{words.screens.none}</span>
  const text = sign ? formats.money(minor as Minor) : formats.amount(minor as Minor)
  return <span className="figure">{text}</span>
}

/** A price typed in major units: like an amount, or with all its places where it has more than the currency. */
export function UnitPrice({ value }: { value: string }) {
  const { formats, settings } = useShop()
  const exact = parseMinor(value, settings.place.currency, '')
  return <span className="figure">{exact.ok ? formats.amount(exact.value) : formats.quantity(value)}</span>
}

/** A plain number, or a decimal text as typed, in the shop's own way of writing. */
export function Figure({ value, unit }: { value: number | string; unit?: string }) {
  const { formats } = useShop()
  const text = typeof value === 'number' ? formats.number(value) : formats.quantity(value)
  return <span className="figure">{unit ? `${text} ${unit}` : text}</span>
}

/** Seconds fast (+) or slow (−), never rounded away from their sign. */
export function Seconds({ value }: { value: number }) {
  const { formats } = useShop()
  return <span className="figure">{formats.signedSeconds(value)}</span>
}

/** A civil date `YYYY-MM-DD`: `short` 4 Mar, `medium` 4 Mar 2027, `long` with its weekday. A dash for null. */
export function CivilDate({
  on,
  style = 'medium',
}: {
  on: string | null | undefined
  style?: 'short' | 'medium' | 'long'
}) {
  const { formats, words } = useShop()
  if (!on) return <span>{words.screens.noDate}</span>
  const written = { short: formats.shortDate, medium: formats.date, long: formats.longDate }[style](on)
  return <time dateTime={on}>{written}</time>
}

/** A day for the margin of a page: its weekday above its date. */
export function MarginDay({ on }: { on: string }) {
  const { formats } = useShop()
  return (
    <time dateTime={on}>
      {formats.weekday(on)}
      <br />
      {formats.date(on)}
    </time>
  )
}

/** An estimated date; once past, said to be late in words as well as in colour. */
export function DueDate({ on, late }: { on: string | null | undefined; late: boolean }) {
  const { formats, words } = useShop()
  if (!on || !late) return <CivilDate on={on} style="short" />
  return (
    <time dateTime={on} className="late">
      {words.screens.late(formats.shortDate(on))}
    </time>
  )
}

/** An ISO instant as date and time on the shop's wall clock. */
export function Instant({ at }: { at: string }) {
  const { formats } = useShop()
  return <time dateTime={at}>{formats.instant(at)}</time>
}
