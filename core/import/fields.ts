/**
 * What a column of an existing shop's list can stand for, with the headings it usually has there (lower case, letters
 * and figures only). Several columns may stand for the same thing: names are joined, addresses put below each other.
 * The headings are our own guess.
 */
export const importFields = {
  name: ['name', 'owner', 'customer', 'client', 'fullname', 'firstname', 'forename', 'lastname', 'surname'],
  phone: ['phone', 'telephone', 'tel', 'mobile', 'cell', 'phonenumber', 'homephone', 'workphone'],
  'e-mail': ['email', 'mail', 'emailaddress'],
  address: [
    'address',
    'street',
    'address1',
    'address2',
    'town',
    'city',
    'county',
    'state',
    'postcode',
    'zip',
  ],
  country: ['country', 'countrycode'],
  notes: ['notes', 'note', 'remarks', 'ownernotes', 'comments'],
  form: ['form', 'clock', 'clocktype', 'type', 'kind', 'clockform'],
  maker: ['maker', 'make', 'manufacturer', 'makerasread', 'signed'],
  serial: ['serial', 'serialnumber', 'serialno', 'number'],
  marks: ['marks', 'mark', 'description'],
  trains: ['trains', 'numberoftrains'],
  dial: ['dial', 'dialtype'],
  clockNotes: ['clocknotes', 'clockremarks'],
} as const satisfies Record<string, readonly string[]>

/** What a column stands for. */
export type ImportField = keyof typeof importFields

/** What each column of the file stands for, in order; null for one that is left out. */
export type Mapping = readonly (ImportField | null)[]

const plain = (heading: string) => heading.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '')

/** What a column of this heading most likely stands for; null where nothing can be guessed. */
function guessed(heading: string): ImportField | null {
  const text = plain(heading)
  const known = Object.entries(importFields) as [ImportField, readonly string[]][]
  const exact = known.find(([, headings]) => headings.includes(text))
  const begins = known.find(([, headings]) => headings.some(one => one.length > 3 && text.startsWith(one)))
  return (exact ?? begins)?.[0] ?? null
}

/** What the columns most likely stand for, by their headings. */
export const guessedMapping = (headings: readonly string[]): Mapping => headings.map(guessed)
