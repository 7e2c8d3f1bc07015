import type { UseQueryResult } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { Refused } from '../api.ts'
import { useShop } from '../shop.tsx'
import { Page } from './page.tsx'

interface AskedProps<View> {
  readonly query: UseQueryResult<View>
  /** What the page is called where there is nothing to show. */
  readonly title: string
  readonly children: (view: View) => ReactNode
}

/** A page made from what was asked of the ledger; where the ledger has no answer, the page says why. */
export function Asked<View>({ query: { data, error }, title, children }: AskedProps<View>) {
  const { screens } = useShop().words
  if (data !== undefined) return children(data)
  if (!error) return null
  return (
    <Page title={title}>
      <p className="aside-words">{error instanceof Refused ? error.message : screens.unreachable}</p>
    </Page>
  )
}
