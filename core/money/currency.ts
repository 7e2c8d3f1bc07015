/**
 * Minor units of ISO 4217 (list one, current currencies and funds; metals, test and "no currency" codes have none).
 * `Intl` is no source for these: its fraction digits follow cash use and differ for HUF, COP, IDR, PKR, IQD and
 * others.
 */
const codesByDigits = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  2: `AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP
    COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR
    JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN
    NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL
    THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG`,
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
} as const

/** Withdrawn since 2020 (ISO 4217 list three): old papers may still carry them. All had two digits. */
const withdrawn = 'ANG BGN CUC HRK SLL ZWL'

export type MinorDigits = keyof typeof codesByDigits

const digitsByCode: ReadonlyMap<string, MinorDigits> = new Map([
  ...codes(codesByDigits[0]).map(code => [code, 0] as const),
  ...codes(`${codesByDigits[2]} ${withdrawn}`).map(code => [code, 2] as const),
  ...codes(codesByDigits[3]).map(code => [code, 3] as const),
  ...codes(codesByDigits[4]).map(code => [code, 4] as const),
])

function codes(list: string): string[] {
  return list.split(/\s+/)
}

/**
 * How many decimal places the currency's minor unit stands for, or undefined when `currency` is no ISO 4217 code
 * with a minor unit.
 */
export const minorDigits = (currency: string): MinorDigits | undefined => digitsByCode.get(currency)

/** Every currency the shop may keep its books in, sorted by code. */
export const currencies: readonly string[] = codes(
  `${codesByDigits[0]} ${codesByDigits[2]} ${codesByDigits[3]} ${codesByDigits[4]}`,
).sort()
