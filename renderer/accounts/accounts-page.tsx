import type { ReactNode } from 'react'
import { Link, useLocation, useSearchParams } from 'wouter'
import type { Words } from '../../core/words/en/index.ts'
import { Page, type PageProps } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'

type Part = Exclude<keyof Words['accounts']['parts'], 'label'>

const places: Readonly<Record<Part, string>> = {
  papers: '/accounts',
  owed: '/accounts/owed',
  money: '/accounts/money',
  ledger: '/accounts/ledger',
  drawer: '/accounts/drawer',
  tax: '/accounts/tax',
  figures: '/accounts/figures',
  periods: '/accounts/periods',
  dayBook: '/accounts/day-book',
}

/** Parts that speak of a period: the one chosen goes along from each to the others. */
const ofPeriod: readonly Part[] = ['money', 'ledger', 'tax', 'figures']

/** The frame of every part of the accounts: the page with the way to the other parts below its head. */
export function AccountsPage({ children, ...page }: Omit<PageProps, 'children'> & { children: ReactNode }) {
  return (
    <Page {...page}>
      <Parts />
      {children}
    </Page>
  )
}

function Parts() {
  const { parts } = useShop().words.accounts
  const [path] = useLocation()
  const [asked] = useSearchParams()
  const [from, to] = [asked.get('from'), asked.get('to')]
  const chosen = from && to ? `?${new URLSearchParams({ from, to })}` : ''
  return (
    <nav className="account-parts" aria-label={parts.label}>
      <ul>
        {(Object.keys(places) as Part[]).map(part => (
          <li key={part}>
            <Link
              href={`${places[part]}${ofPeriod.includes(part) ? chosen : ''}`}
              aria-current={path === places[part] ? 'page' : undefined}
            >
              {parts[part]}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}
