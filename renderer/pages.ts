import { type ComponentType, type LazyExoticComponent, lazy } from 'react'
import type { PageName } from '../core/words/en/start.ts'

/** The pages in the order of the thumb index. Each is fetched when it is first opened. */
export const pages: Partial<Record<PageName, LazyExoticComponent<ComponentType>>> = {
  counter: lazy(() => import('./counter/page.tsx')),
  bench: lazy(() => import('./bench/page.tsx')),
  shelf: lazy(() => import('./shelf/page.tsx')),
  accounts: lazy(() => import('./accounts/page.tsx')),
  stores: lazy(() => import('./stores/page.tsx')),
  register: lazy(() => import('./register/page.tsx')),
  shop: lazy(() => import('./shop/page.tsx')),
}

/** The thumb index from top to bottom; Alt and a figure turn to them. */
export const pageNames = [
  'counter',
  'bench',
  'shelf',
  'accounts',
  'stores',
  'register',
  'shop',
] as const satisfies readonly PageName[]
