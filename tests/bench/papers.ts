import { usualSize } from '../../core/papers/sizes.ts'
import type { AnyContents } from '../../core/papers/working.ts'
import { en } from '../../core/words/en/index.ts'
import { renderPaper } from '../../electron/papers/paper.ts'
import { invoice, longInvoice } from '../papers/samples.ts'
import { benchCard, conditionReport, runIn, statement, tags } from '../papers/working-samples.ts'

const warmUps = 5
const runs = 40

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

const print = (contents: AnyContents): Promise<Buffer> =>
  renderPaper(contents, { size: usualSize(contents.kind, 'a4'), words: en })

async function medianMs(contents: AnyContents): Promise<number> {
  const times: number[] = []
  for (let run = 0; run < warmUps + runs; run++) {
    const from = performance.now()
    await print(contents)
    if (run >= warmUps) times.push(performance.now() - from)
  }
  return median(times)
}

/** A paper's cost by its kind: median milliseconds once the typefaces are read, and bytes. */
async function costs(all: readonly AnyContents[]) {
  const rows: Record<string, { ms: number; bytes: number }> = {}
  for (const contents of all)
    rows[contents.kind] = { ms: await medianMs(contents), bytes: (await print(contents)).length }
  return rows
}

const invoices = 1000

/** How many of a thousand invoices of invented lines come out byte for byte the same when they are drawn a second time. */
async function drawnAlike(): Promise<number> {
  let alike = 0
  for (let n = 0; n < invoices; n++) {
    const contents = { ...longInvoice(1 + (n % 12)), number: `I${String(n + 1).padStart(4, '0')}` }
    if ((await print(contents)).equals(await print(contents))) alike += 1
  }
  return alike
}

/** What papers cost: an invoice (target: at most 80 ms, and 80 kB a page), one of two hundred lines, and the larger working papers; and how many of a thousand invoices are drawn twice alike (target: all). */
export async function papers() {
  return {
    invoicePdfMs: await medianMs(invoice),
    invoicePdf200LinesMs: await medianMs(longInvoice(200)),
    invoicePdfBytes: (await print(invoice)).length,
    invoicesDrawn: invoices,
    invoicesDrawnAlike: await drawnAlike(),
    working: await costs([tags, conditionReport, benchCard, runIn, statement]),
  }
}
