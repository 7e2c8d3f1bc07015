import byCountry from 'country-to-currency'

/** Where the browser believes it is: a start for the form, every part of it to be corrected there. */
export function guessedPlace() {
  const { locale, timeZone } = Intl.DateTimeFormat().resolvedOptions()
  const country = new Intl.Locale(locale).maximize().region ?? ''
  return { country, locale: localeIn(country, locale), timeZone, currency: currencyOf(country) }
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

/** The time zones this browser knows, and the one it is in; `''` stands first where none is chosen yet. */
export const zones = (here: string): Record<string, string> =>
  Object.fromEntries(
    [...new Set([here, ...Intl.supportedValuesOf('timeZone')])].sort().map(zone => [zone, zone]),
  )

/** A method of newer browsers (ECMA-402, Intl Locale Info). */
type WithZones = Intl.Locale & { readonly getTimeZones?: () => string[] | undefined }

/** The time zone to propose for a country: the one at hand where it is of that country, else its only one; '' where it has several. */
export function zoneOf(country: string, here: string): string {
  if (country === '') return here
  const locale: WithZones = new Intl.Locale('und', { region: country })
  const theirs = locale.getTimeZones?.() ?? [here]
  if (theirs.includes(here)) return here
  return theirs.length === 1 ? (theirs[0] ?? '') : ''
}

const letters = [...'abcdefghijklmnopqrstuvwxyz']

/** The languages with a code of two letters (ISO 639-1) whose dates and figures this browser can write. */
const languages = () =>
  Intl.NumberFormat.supportedLocalesOf(letters.flatMap(first => letters.map(second => first + second)))

/** The same language as it is written in a country; a half-typed locale stays. */
export function localeIn(country: string, locale: string): string {
  if (country === '') return locale
  try {
    return `${new Intl.Locale(locale).language}-${country}`
  } catch {
    return locale
  }
}

/** Ways of writing in a country, by the language's name with the tag (BCP 47), sorted by name; the one at hand among them. */
export function locales(country: string, here: string): Record<string, string> {
  const tags = new Set([
    here,
    ...languages().map(language => (country ? `${language}-${country}` : language)),
  ])
  const names = new Intl.DisplayNames(['en'], { type: 'language', languageDisplay: 'standard' })
  const shown = [...tags].map(tag => [tag, `${names.of(tag)} · ${tag}`] as const)
  return Object.fromEntries(shown.sort(([, a], [, b]) => a.localeCompare(b)))
}
