import { eInvoiceProblems } from './e-invoice.ts'
import { meanwhile } from './meanwhile.ts'
import { problems } from './problems.ts'
import { refusals } from './refusals.ts'

/** The sentence of every problem, by its code. The codes there are, and the figures each needs, are read off this table. */
export const sentences = { ...problems, ...refusals, ...meanwhile, ...eInvoiceProblems }
