import { desc, eq } from 'drizzle-orm'
import type { Ledger, Read, Write } from '../file/ledger.ts'
import { drafts } from '../schema/index.ts'
import { isKeyUsed } from './day-book.ts'

/** What is typed on a page so far, under a key the page made up when it was begun. */
export interface Draft {
  readonly key: string
  readonly page: string
  /** How a list tells it from another, as by the owner's name. */
  readonly title: string
  readonly body: unknown
}

/**
 * Keeps a draft as it now stands, and says whether it did: what was entered under its key meanwhile, as from another window, is a draft
 * no more. It is no act of the shop and leaves no row in the day book.
 */
export const keepDraft = (ledger: Ledger, draft: Draft, at: string): boolean =>
  ledger.write(tx => {
    if (isKeyUsed(tx, draft.key)) return false
    const { title, body } = draft
    tx.insert(drafts)
      .values({ ...draft, begunAt: at, changedAt: at })
      .onConflictDoUpdate({ target: drafts.key, set: { title, body, changedAt: at } })
      .run()
    return true
  })

/** Forgets a draft, as when it has been entered or thrown away. */
export const dropDraft = (tx: Write, key: string): void =>
  void tx.delete(drafts).where(eq(drafts.key, key)).run()

/** The drafts of a page, the last touched first. */
export const draftsOf = (read: Read, page: string) =>
  read
    .select({ key: drafts.key, title: drafts.title, begunAt: drafts.begunAt, changedAt: drafts.changedAt })
    .from(drafts)
    .where(eq(drafts.page, page))
    .orderBy(desc(drafts.changedAt), drafts.key)
    .all()

/** One draft with what was typed; undefined when it is gone. */
export const draftOf = (read: Read, key: string) =>
  read.select().from(drafts).where(eq(drafts.key, key)).get()
