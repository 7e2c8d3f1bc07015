/** The decimal and grouping signs of a locale's figures. */
function signsOf(locale: string): { decimal: string; group: string } {
  const parts = new Intl.NumberFormat(locale, { useGrouping: 'always' }).formatToParts(12345.6)
  const sign = (type: string) => parts.find(part => part.type === type)?.value ?? ''
  return { decimal: sign('decimal') || '.', group: sign('group') }
}

/**
 * A decimal as typed in the shop's way of writing, as the plain text the sums read: `62,50` is `62.50` where the comma is the decimal
 * sign. A grouping sign is never guessed at: `1.250` there, or `1,250` where the point is, comes back as `1 250`, which is refused
 * as no plain number, for it could be meant either way. Anything else comes back as it is.
 */
export function plainDecimal(typed: string, locale: string): string {
  const { decimal, group } = signsOf(locale)
  const text = typed.trim()
  if (decimal === '.') return text
  if (group === '.' && /^-?\d{1,3}\.\d{3}$/.test(text)) return text.replace('.', ' ')
  return /^-?\d+,\d+$/.test(text) && decimal === ',' ? text.replace(',', '.') : text
}

/** A plain decimal as it is typed in the shop's way of writing: `62.5` is `62,5` where the comma is the decimal sign. */
export const localDecimal = (plain: string, locale: string): string =>
  plain.replace('.', signsOf(locale).decimal)
