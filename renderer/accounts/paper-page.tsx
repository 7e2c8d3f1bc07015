import { useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { Link, useLocation } from 'wouter'
import { minor } from '../../core/money/minor.ts'
import { usualSize } from '../../core/papers/sizes.ts'
import { answer, api } from '../api.ts'
import { clockWords } from '../clock-words.ts'
import { EInvoiceLink } from '../exports/page-section.tsx'
import { Asked } from '../parts/asked.tsx'
import { CivilDate, Money } from '../parts/figures.tsx'
import { Facts, Page, Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import { PaperItself } from '../parts/paper-itself.tsx'
import { paperPath } from '../parts/paper-link.tsx'
import { ShopProvider, useShop } from '../shop.tsx'
import { CreditInvoice } from './credit-form.tsx'
import { carriesMoney, type PaperView, paperQuery } from './paper.ts'
import { PaperSays } from './paper-says.tsx'

/** One paper: what it says, as it was frozen on its day, and the paper itself. */
export function PaperPage({ id, act }: { id: string; act: string | undefined }) {
  const { accounts } = useShop().words
  const query = useQuery(paperQuery(id))
  return (
    <Asked query={query} title={accounts.paper.section}>
      {view => (
        <InItsOwnMoney view={view}>
          <Shown view={view} crediting={act === 'credit'} />
        </InItsOwnMoney>
      )}
    </Asked>
  )
}

/** A paper is read in the money, the zone and the way of writing it was issued in, whatever the shop's are now. */
function InItsOwnMoney({ view: { contents }, children }: { view: PaperView; children: ReactNode }) {
  const { data } = useQuery({ queryKey: ['shop'], queryFn: () => answer(api.pages.shop.$get()) })
  if (!data?.open) return null
  const { locale, timeZone, currency } = contents
  const place = { ...data.settings.place, locale, timeZone, currency }
  return <ShopProvider view={{ ...data, settings: { ...data.settings, place } }}>{children}</ShopProvider>
}

/** Whether an invoice may be credited: something of it is left. */
const canCredit = ({ creditable }: PaperView) => creditable !== null

function Shown({ view, crediting }: { view: PaperView; crediting: boolean }) {
  const { words, settings } = useShop()
  const [, navigate] = useLocation()
  const { paper, contents, drawn } = view
  const { supplementTitle, titles, titleNumber } = words.papers
  const supplement = contents.kind === 'estimate' && contents.supplement
  const title = titleNumber(supplement ? supplementTitle : titles[paper.kind], paper.number)
  return (
    <Page
      title={title}
      subtitle={words.accounts.paper.never}
      date={<CivilDate on={paper.issuedOn} />}
      sums={
        carriesMoney(paper.kind)
          ? [{ figure: <Money minor={paper.totalMinor} sign />, words: words.accounts.paper.total }]
          : []
      }
    >
      {crediting && canCredit(view) && (
        <CreditInvoice view={view} close={() => navigate(`/accounts/paper/${paper.id}`)} />
      )}
      <Section title={words.accounts.paper.section}>
        <About view={view} />
        {canCredit(view) && !crediting && (
          <More>
            <div className="buttons">
              <Link className="button second" href={`/accounts/paper/${paper.id}/credit`}>
                {words.accounts.paper.credit}
              </Link>
            </div>
          </More>
        )}
      </Section>
      <PaperItself
        kind={paper.kind}
        title={title}
        path={paperPath(paper.id)}
        size={drawn?.size ?? usualSize(paper.kind, settings.place.paper)}
        drawn={drawn}
      />
      <PaperSays contents={contents} />
    </Page>
  )
}

/** Whose paper it is, of which clock and repair, and which papers it belongs with. */
function About({ view: { paper, contents, corrects, correctedBy } }: { view: PaperView }) {
  const { settings, words, formats } = useShop()
  const { clock } = contents
  const titled = (one: Pick<PaperView['paper'], 'kind' | 'number'>) =>
    words.papers.titleNumber(words.papers.titles[one.kind], one.number)
  const described = clock && {
    ...clock,
    duration: clock.duration ?? ('unknown' as const),
    trains: clock.trains ?? null,
    dial: clock.dial ?? ('unknown' as const),
    maker: clock.maker ?? '',
    serial: clock.serial ?? '',
  }
  return (
    <>
      {correctedBy.length > 0 && (
        <p className="late">
          {words.accounts.paper.credited(
            formats.money(minor(-correctedBy.reduce<number>((sum, one) => sum + one.totalMinor, 0))),
            titled(paper),
          )}{' '}
          {correctedBy.map(one => (
            <Link key={one.id} href={`/accounts/paper/${one.id}`}>
              {titled(one)}
            </Link>
          ))}
        </p>
      )}
      <Facts
        facts={[
          [
            words.eInvoice.name,
            settings.eInvoice.on && (paper.kind === 'invoice' || paper.kind === 'credit-note') && (
              <EInvoiceLink key="e-invoice" id={paper.id} />
            ),
          ],
          [
            words.accounts.paper.owner,
            <Link key="owner" href={`/register/owner/${paper.owner.id}`}>
              {contents.owner.name}
            </Link>,
          ],
          [
            words.accounts.paper.repair,
            paper.repairNumber !== null && (
              <Link href={`/counter/${paper.repairNumber}`}>{paper.repairNumber}</Link>
            ),
          ],
          [words.accounts.paper.clock, described && clockWords(words, described)],
          [
            words.accounts.paper.corrects,
            corrects && <Link href={`/accounts/paper/${corrects.id}`}>{titled(corrects)}</Link>,
          ],
        ]}
      />
    </>
  )
}
