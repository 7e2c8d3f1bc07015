import { accounts } from './accounts.ts'
import { bench } from './bench.ts'
import { coded } from './coded.ts'
import { condition } from './condition.ts'
import { counter } from './counter.ts'
import { demo } from './demo.ts'
import { eInvoice } from './e-invoice.ts'
import { exports } from './exports.ts'
import { figures } from './figures.ts'
import { listImport } from './import.ts'
import { measures } from './measures.ts'
import { messages } from './messages.ts'
import { papers } from './papers.ts'
import { priceBook } from './price-book.ts'
import { register } from './register.ts'
import { repair } from './repair.ts'
import { restore } from './restore.ts'
import { screens } from './screens.ts'
import { sentences } from './sentences.ts'
import { coverReasons, faults, seen, soundSheet, stillToShow, verdicts, verdictsInShort } from './shelf.ts'
import { shelf } from './shelf-page.ts'
import { shop } from './shop.ts'
import { start } from './start.ts'
import { stores } from './stores.ts'
import { verify } from './verify.ts'
import { vocabulary } from './vocabulary.ts'
import { workingSteps } from './working.ts'

/** Every word shown to people, in English. Another language is another object of the same type. */
export const en = {
  ...vocabulary,
  bench,
  accounts,
  coded,
  coverReasons,
  seen,
  soundSheet,
  stillToShow,
  faults,
  verdicts,
  verdictsInShort,
  condition,
  counter,
  demo,
  eInvoice,
  exports,
  figures,
  listImport,
  messages,
  papers,
  priceBook,
  problems: sentences,
  register,
  repair,
  restore,
  screens,
  shop,
  measures,
  shelf,
  start,
  stores,
  verify,
  workingSteps,
}

/** The catalogue's shape, which every language fills. */
export type Words = typeof en
