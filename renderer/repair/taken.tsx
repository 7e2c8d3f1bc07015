import { useQuery } from '@tanstack/react-query'
import { useSearchParams } from 'wouter'
import { paperQuery } from '../accounts/paper.ts'
import { Money } from '../parts/figures.tsx'
import { Facts, Section } from '../parts/page.tsx'
import { PaperLink } from '../parts/paper-link.tsx'
import { useShop } from '../shop.tsx'

/** The address of a page with the receipt just issued shown on it. */
export const withReceipt = (place: string, receiptId: number): string => `${place}?receipt=${receiptId}`

/** What was just taken or given back, the change to give, and the receipt at hand; nothing where the address names none. */
export function Taken() {
  const [asked] = useSearchParams()
  const id = asked.get('receipt')
  return id ? <Receipt id={id} /> : null
}

function Receipt({ id }: { id: string }) {
  const { words } = useShop()
  const { taken } = words.repair
  const { data } = useQuery(paperQuery(id))
  if (data?.contents.kind !== 'receipt') return null
  const { amount, change, toAccount, number } = data.contents
  const title = words.papers.titleNumber(words.papers.titles.receipt, number)
  return (
    <Section title={taken.title}>
      <Facts
        facts={[
          [
            amount < 0 ? taken.givenBack : taken.received,
            <Money key="amount" minor={Math.abs(amount)} sign />,
          ],
          [
            taken.change,
            change !== undefined && (
              <b>
                <Money minor={change} sign />
              </b>
            ),
          ],
          [taken.toAccount, toAccount !== undefined && <Money minor={toAccount} sign />],
          [taken.receipt, <PaperLink key="receipt" id={data.paper.id} title={title} />],
        ]}
      />
    </Section>
  )
}
