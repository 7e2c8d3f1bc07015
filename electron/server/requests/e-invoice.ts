import { Hono } from 'hono'
import { eInvoice } from '../../../core/e-invoice/e-invoice.ts'
import { ublXml } from '../../../core/e-invoice/ubl.ts'
import { en } from '../../../core/words/en/index.ts'
import { refuse } from '../../../db/rows/refusal.ts'
import { readSettings } from '../../../db/rows/settings.ts'
import { accepted } from '../../../db/rules/checked-in.ts'
import { documentRow, frozenContents } from '../../../db/rules/frozen-papers.ts'
import type { Env } from './perform.ts'

/** Invoices and credit notes as EN 16931 XML beside the PDF, where the shop turns it on: the same bytes each time. */
export const eInvoices = new Hono<Env>().get('/:file{[1-9]\\d{0,15}\\.xml}', c => {
  const { read } = c.var.ledger
  if (!readSettings(read).eInvoice.on) refuse('eInvoice.off')
  const row = documentRow(read, Number.parseInt(c.req.param('file'), 10))
  const paper = frozenContents(row)
  if (paper.kind !== 'invoice' && paper.kind !== 'credit-note') return refuse('eInvoice.notBilled')
  const xml = ublXml(accepted(eInvoice(paper, en.eInvoice)), en.eInvoice)
  return c.body(xml, 200, {
    'Content-Type': 'application/xml; charset=utf-8',
    'Content-Disposition': `attachment; filename="${row.kind}-${row.number.replaceAll('/', '-')}.xml"`,
    'Cache-Control': 'no-store',
  })
})
