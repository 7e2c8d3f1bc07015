import { en } from '../../core/words/en/index.ts'
import { renderPaper } from '../../electron/papers/paper.ts'
import { invoice, longInvoice } from '../papers/samples.ts'

const warmUps = 5
const runs = 40

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

async function medianMs(contents: typeof invoice): Promise<number> {
  const times: number[] = []
  for (let run = 0; run < warmUps + runs; run++) {
    const from = performance.now()
    await renderPaper(contents, { size: 'a4', words: en })
    if (run >= warmUps) times.push(performance.now() - from)
  }
  return median(times)
}

/** What an invoice costs once the typefaces are read: median milliseconds, and the bytes of one page. Target: at most 80 ms. */
export async function papers() {
  const pdf = await renderPaper(invoice, { size: 'a4', words: en })
  return {
    invoicePdfMs: await medianMs(invoice),
    invoicePdf200LinesMs: await medianMs(longInvoice(200)),
    invoicePdfBytes: pdf.length,
  }
}
