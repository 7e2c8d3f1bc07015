import byCountry from 'country-to-currency'

/** Where the browser believes it is: a start for the form, every part of it to be corrected there. */
export function guessedPlace() {
  const { locale, timeZone } = Intl.DateTimeFormat().resolvedOptions()
  const country = new Intl.Locale(locale).maximize().region ?? ''
  return { country, locale, timeZone, currency: currencyOf(country) }
}

/** The money of a country (ISO 3166-1 to ISO 4217, by the package country-to-currency); '' where it is not known. */
export const currencyOf = (country: string): string =>
  Object.hasOwn(byCountry, country) ? byCountry[country as keyof typeof byCountry] : ''

/** The countries and territories of ISO 3166-1. */
const regions = () => Object.keys(byCountry)

/** Codes with their names in the locale's language, sorted by name; `''` stands first where nothing is chosen yet. */
export function named(type: 'region' | 'currency', locale: string, codes: readonly string[] = regions()) {
  const names = namesOf(type, locale)
  const known = codes.flatMap(code => {
    const name = names.of(code)
    return name && name !== code ? [[code, type === 'currency' ? `${code} · ${name}` : name] as const] : []
  })
  const sorted = known.sort(([, a], [, b]) => a.localeCompare(b))
  return Object.fromEntries([['', ''], ...sorted])
}

/** A locale half typed falls back to English until it is whole. */
function namesOf(type: 'region' | 'currency', locale: string): Intl.DisplayNames {
  try {
    return new Intl.DisplayNames([locale], { type, fallback: 'code' })
  } catch {
    return new Intl.DisplayNames(['en'], { type, fallback: 'code' })
  }
}

/** The time zones this browser knows, and the one it is in. */
export const zones = (here: string): Record<string, string> =>
  Object.fromEntries(
    [...new Set([here, ...Intl.supportedValuesOf('timeZone')])].sort().map(zone => [zone, zone]),
  )
