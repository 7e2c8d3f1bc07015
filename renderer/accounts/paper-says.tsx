import type { ReactNode } from 'react'
import { belongingWords } from '../clock-words.ts'
import { Facts, Section } from '../parts/page.tsx'
import { MoneyLines } from '../repair/money-lines.tsx'
import { useShop } from '../shop.tsx'
import type { PaperView } from './paper.ts'

type Contents = PaperView['contents']
type Of<Kind extends Contents['kind']> = Extract<Contents, { kind: Kind }>
type Saying = readonly (readonly [string, ReactNode])[]

/** What a paper says beyond whose it is: each kind its own facts, and lines with their sums where it has them. */
export function PaperSays({ contents }: { contents: Contents }) {
  const { accounts } = useShop().words
  const says = useSayings(contents)
  return (
    <>
      <Section title={accounts.paper.says}>
        <Facts facts={says} />
      </Section>
      {'lines' in contents && (
        <Section title={accounts.paper.lines}>
          <MoneyLines caption={accounts.paper.lines} lines={contents.lines} priced={contents.priced} />
        </Section>
      )}
    </>
  )
}

function useSayings(contents: Contents): Saying {
  const shop = useShop()
  switch (contents.kind) {
    case 'claim-check':
      return claimCheck(shop, contents)
    case 'estimate':
      return estimate(shop, contents)
    case 'invoice':
      return invoice(shop, contents)
    case 'credit-note':
      return creditNote(shop, contents)
    case 'receipt':
      return receipt(shop, contents)
    case 'warranty':
      return warranty(shop, contents)
  }
}

type Shop = ReturnType<typeof useShop>

const money = ({ formats }: Shop, amount: number | undefined) =>
  amount === undefined ? '' : formats.money(amount as Parameters<typeof formats.money>[0])

const date = ({ formats }: Shop, on: string | undefined) => (on ? formats.date(on) : '')

/** One thing below the other. */
const list = (lines: readonly string[]) =>
  lines.length > 0 && (
    <ul>
      {lines.map(line => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  )

function claimCheck(shop: Shop, paper: Of<'claim-check'>): Saying {
  const { words } = shop
  const { claim } = words.papers
  const { estimate } = paper
  const condition = paper.condition.map(({ component, finish, grade, remark }) => {
    const state = [finish && words.finishes[finish], grade && words.grades[grade], remark]
    return claim.conditionOf(words.components[component], state.filter(Boolean).join(', '))
  })
  const belongings = paper.belongings.map(
    ({ custody, ...one }) =>
      `${belongingWords(words, { ...one, position: one.position ?? '', description: one.description ?? '' })}: ${words.custodies[custody]}`,
  )
  const range =
    estimate.high === undefined ? '' : `${money(shop, estimate.low)} – ${money(shop, estimate.high)}`
  return [
    [claim.fault, paper.fault],
    [words.accounts.paper.condition, list(condition)],
    [claim.earlierRepairs, list((paper.earlierRepairs ?? []).map(sign => words.earlierRepairs[sign]))],
    [claim.springs, paper.springs && words.springStates[paper.springs]],
    [words.accounts.paper.belongings, list(belongings)],
    [claim.estimatedDate, date(shop, paper.estimatedOn)],
    [claim.estimateFee, money(shop, estimate.fee)],
    [claim.expected, range],
    [claim.deposit, money(shop, paper.deposit)],
    [claim.signedIn, paper.signedIn?.name],
  ]
}

function estimate(shop: Shop, paper: Of<'estimate'>): Saying {
  const said = shop.words.papers.estimate
  return [
    [said.version, String(paper.version)],
    [said.agreedBefore, money(shop, paper.agreedBefore)],
    [said.range, paper.range && said.rangeSaid(money(shop, paper.range.low), money(shop, paper.range.high))],
    [said.validUntil, date(shop, paper.validUntil)],
    [said.estimatedDate, date(shop, paper.estimatedOn)],
    [shop.words.papers.notes, paper.notes],
  ]
}

function invoice(shop: Shop, paper: Of<'invoice'>): Saying {
  const { papers, paymentMethods, scopes } = shop.words
  const payments = paper.payments.map(
    ({ method, on, amount }) =>
      `${papers.invoice.received(paymentMethods[method], date(shop, on))}: ${money(shop, amount)}`,
  )
  const { warranty: given } = paper
  return [
    [papers.totals.taxInclusive, money(shop, paper.priced.taxInclusive)],
    [papers.invoice.payments, list(payments)],
    [papers.totals.due, money(shop, paper.priced.due)],
    [papers.invoice.dueOn, date(shop, paper.dueOn)],
    [
      papers.invoice.warranty,
      given &&
        papers.invoice.warrantySaid(
          scopes[given.scope],
          date(shop, given.startOn),
          date(shop, given.lastDay),
        ),
    ],
    [papers.notes, paper.notes],
  ]
}

function creditNote(shop: Shop, paper: Of<'credit-note'>): Saying {
  const { credit, totals } = shop.words.papers
  return [
    [credit.corrects, credit.invoiceOf(paper.invoice.number, date(shop, paper.invoice.issuedOn))],
    [credit.reason, paper.reason],
    [totals.credited, money(shop, paper.priced.taxInclusive)],
  ]
}

function receipt(shop: Shop, paper: Of<'receipt'>): Saying {
  const { papers, paymentMethods } = shop.words
  const said = papers.receipt
  const towards = {
    invoice: said.forInvoice(paper.invoiceNumber ?? ''),
    deposit: paper.repairNumber ? said.forRepairDeposit(paper.repairNumber) : said.forDeposit,
    account: said.forAccount,
  }
  const held = paper.balance < 0
  return [
    [
      paper.amount < 0 ? said.givenBack : said.received,
      money(shop, paper.amount < 0 ? -paper.amount : paper.amount),
    ],
    [said.method, paymentMethods[paper.method]],
    [said.tendered, money(shop, paper.tendered)],
    [said.change, money(shop, paper.change)],
    [said.reference, paper.reference],
    [said.onDate, date(shop, paper.onDate)],
    [said.towards, towards[paper.towards]],
    [said.toAccount, money(shop, paper.toAccount)],
    [said.rounding, money(shop, paper.rounding)],
    [held ? said.held : said.balance, money(shop, held ? -paper.balance : paper.balance)],
  ]
}

function warranty(shop: Shop, paper: Of<'warranty'>): Saying {
  const { papers, scopes, exclusions, setUpAdvice } = shop.words
  const said = papers.warranty
  return [
    [said.scope, scopes[paper.scope]],
    [said.term, said.termSaid(date(shop, paper.startOn), date(shop, paper.lastDay))],
    [said.work, list(paper.work)],
    [said.exclusions, list(paper.exclusions.map(exclusion => exclusions[exclusion]))],
    [said.advice, list(paper.advice.map(advice => setUpAdvice[advice]))],
    [said.invoice, paper.invoiceNumber],
  ]
}
