import type { Period } from '../../core/calendar/period.ts'
import type { Words } from '../../core/words/en/index.ts'
import { Download } from '../parts/download.tsx'
import { Section } from '../parts/page.tsx'
import { WhyNot } from '../parts/reserved.tsx'
import { useShop } from '../shop.tsx'

type Said = Words['exports']

/** Where the files of other programs are. */
const others: Readonly<Record<keyof Said['files'], string>> = {
  journal: 'books.journal',
  dates: 'dates.ics',
  cards: 'owners.vcf',
}

const File = ({ file, name }: { file: string; name: string }) => (
  <li>
    {file === others.dates ? (
      <a href={`/exports/${file}`} download>
        {name}
      </a>
    ) : (
      <Download path={`/exports/${file}`}>{name}</Download>
    )}
  </li>
)

/** The books taken out: every table, the journal, dates and address cards, each a link to keep its file. */
export function ExportsSection() {
  const said = useShop().words.exports
  return (
    <Section title={said.title} note={said.note}>
      <WhyNot act="exports.take" />
      <h3>{said.tables}</h3>
      <ul className="plain-choices">
        {(Object.keys(said.names) as (keyof Said['names'])[]).map(name => (
          <File key={name} file={`${name}.csv`} name={said.names[name]} />
        ))}
      </ul>
      <p className="quiet">{said.exactHint}</p>
      <h3>{said.others}</h3>
      <ul className="plain-choices">
        {(Object.keys(others) as (keyof Said['files'])[]).map(name => (
          <File key={name} file={others[name]} name={said.files[name]} />
        ))}
      </ul>
      <p className="quiet">{said.archive}</p>
    </Section>
  )
}

/** The tax of a period as a table. */
export function TaxDownload({ period: { from, to } }: { period: Period }) {
  const { exports } = useShop().words
  return (
    <p>
      <Download path={`/exports/tax.csv?${new URLSearchParams({ from, to })}`}>{exports.tax}</Download>
    </p>
  )
}

/** An invoice or credit note as an e-invoice. */
export const EInvoiceLink = ({ id }: { id: number }) => (
  <a href={`/papers/${id}.xml`} download>
    {useShop().words.eInvoice.link}
  </a>
)
