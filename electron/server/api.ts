import { Hono } from 'hono'
import { accounts } from './requests/accounts.ts'
import { backup } from './requests/backup.ts'
import { bench } from './requests/bench.ts'
import { counter } from './requests/counter.ts'
import { dayBookActs } from './requests/day-book.ts'
import { drafts } from './requests/drafts.ts'
import { estimates } from './requests/estimates.ts'
import { find } from './requests/find.ts'
import { registerImport } from './requests/import.ts'
import { pages } from './requests/pages.ts'
import { paperActs, paperPages } from './requests/papers.ts'
import { peopleActs } from './requests/people.ts'
import type { Env } from './requests/perform.ts'
import { photographActs } from './requests/photographs.ts'
import { register } from './requests/register.ts'
import { shelf } from './requests/shelf.ts'
import { shopActs } from './requests/shop.ts'
import { stores } from './requests/stores.ts'
import { workPages } from './requests/work-pages.ts'

/** Every request of the ledger: acts as POST `/<area>/<verb>`, views as GET `/pages/…`. */
export const api = new Hono<Env>()
  .route('/shop', shopActs)
  .route('/shop', peopleActs)
  .route('/register', register)
  .route('/register', registerImport)
  .route('/counter', counter)
  .route('/estimates', estimates)
  .route('/bench', bench)
  .route('/stores', stores)
  .route('/shelf', shelf)
  .route('/accounts', accounts)
  .route('/papers', paperActs)
  .route('/dayBook', dayBookActs)
  .route('/backup', backup)
  .route('/drafts', drafts)
  .route('/photographs', photographActs)
  .route('/find', find)
  .route('/pages', pages)
  .route('/pages', workPages)
  .route('/pages', paperPages)

export type { RestoreApi } from './requests/restore.ts'

/** The contract between the pages and the ledger; the pages import only this type. */
export type Api = typeof api
