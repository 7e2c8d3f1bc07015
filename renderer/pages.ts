import type { PageName } from '../core/words/en/start.ts'
import { type Code, code } from './parts/code.ts'

/** The pages by name. The code of each is fetched when it is first opened. */
export const pages = {
  counter: code('counter', () => import('./counter/page.tsx')),
  bench: code('bench', () => import('./bench/page.tsx')),
  shelf: code('shelf', () => import('./shelf/page.tsx')),
  accounts: code('accounts', () => import('./accounts/page.tsx')),
  stores: code('stores', () => import('./stores/page.tsx')),
  register: code('register', () => import('./register/page.tsx')),
  shop: code('shop', () => import('./shop/page.tsx')),
} satisfies Record<PageName, Code>

/** The page of a working paper: many pages lead to it, none of the thumb index is it. */
export const workingPaperPage = code('paper', () => import('./paper/page.tsx'))

/** The one page of a ledger that cannot be opened as it stands. */
export const openingPage = code('opening', () => import('./restore/opening.tsx'))

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

/** Which page an address names, as `bench` for `/bench/2207`; the first page for the bare address. */
export const pageAt = (path: string): PageName | undefined => {
  const name = path.split('/')[1]
  return name ? pageNames.find(page => page === name) : pageNames[0]
}
