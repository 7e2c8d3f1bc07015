import { civilDateOf } from '../../core/calendar/zone.ts'
import { type Minor, minorText } from '../../core/money/minor.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Ledger } from '../../db/file/ledger.ts'
import { allHandedOut } from '../../db/papers/working-paper.ts'
import { allDocuments, taxView } from '../../db/read/accounts.ts'
import { repairNumbers, repairView } from '../../db/read/repair.ts'
import { readSettings } from '../../db/rows/settings.ts'

type View = ReturnType<typeof repairView>
type Money = (amount: Minor) => string

const moneyIn =
  ({ place }: Settings): Money =>
  amount =>
    minorText(amount, place.currency)

const estimates = ({ estimates, words }: View, money: Money) =>
  estimates.map(e => ({
    number: e.number,
    supplement: e.supplement,
    total: money(e.priced.taxInclusive),
    tax: money(e.priced.tax),
    word: words.find(word => word.estimateId === e.id)?.answer ?? null,
  }))

const documents = ({ documents }: View, kind: string, money: Money) =>
  documents.filter(d => d.kind === kind).map(d => ({ number: d.number, total: money(d.totalMinor) }))

function warranty({ warranty: { given }, documents }: View) {
  if (!given) return null
  const number = documents.find(d => d.id === given.documentId)?.number
  return { number, scope: given.scope, start: given.startOn, lastDay: given.lastDay }
}

/** Everything a day issued about one repair. */
function repairReport(view: View, settings: Settings, money: Money) {
  const { repair, owner, standing, limit } = view
  const day = (instant: string | null) =>
    instant === null ? null : civilDateOf(instant, settings.place.timeZone)
  return {
    number: repair.number,
    owner: owner.name,
    clock: view.clock.form,
    standing: standing.stage,
    estimatedDate: repair.estimatedOn,
    estimates: estimates(view, money),
    agreed: limit.agreedMinor === null ? null : money(limit.agreedMinor),
    ready: day(repair.readyAt),
    runs: view.runs.map(run => ({
      started: day(run.startedAt),
      plannedReady: run.readyOn,
      outcome: run.outcome,
      figures: run.figures,
    })),
    invoices: documents(view, 'invoice', money),
    creditNotes: documents(view, 'credit-note', money),
    paid: money(view.money.balance.paid),
    due: money(view.money.balance.due),
    collected: day(view.handOver?.at ?? null),
    warranty: warranty(view),
  }
}

/** The number, kind and file name of a paper. */
export const paperFile = (paper: { kind: string; number: string }): string =>
  `${paper.kind}-${paper.number.replaceAll('/', '-')}.pdf`

/** The file name of a working paper that was handed out. */
export const handedFile = ({ id, kind, handedOn }: { id: number; kind: string; handedOn: string }): string =>
  `handed-out-${id}-${kind}-${handedOn}.pdf`

/** Every number a ledger has issued up to `at`: repairs, estimates, invoices, warranties, tax, papers and what was handed out. Amounts as decimal text in major units. */
export function ledgerReport(ledger: Ledger, at: string) {
  const settings = readSettings(ledger.read)
  const money = moneyIn(settings)
  const papers = allDocuments(ledger.read)
  const today = civilDateOf(at, settings.place.timeZone)
  const tax = taxView(ledger.read, papers[0]?.issuedOn ?? today, today)
  return {
    shop: settings.shop.name,
    currency: settings.place.currency,
    on: today,
    repairs: repairNumbers(ledger.read).map(number =>
      repairReport(repairView(ledger.read, number, at), settings, money),
    ),
    tax: {
      from: tax.from,
      to: tax.to,
      taxable: money(tax.taxableMinor),
      tax: money(tax.taxMinor),
      rates: tax.rows.map(row => ({
        code: row.code,
        rate: row.rate,
        taxable: money(row.taxableMinor),
        tax: money(row.taxMinor),
      })),
    },
    papers: papers.map(paper => ({
      number: paper.number,
      kind: paper.kind,
      file: paperFile(paper),
      total: money(paper.totalMinor),
      tax: money(paper.taxMinor),
    })),
    handedOut: allHandedOut(ledger.read).map(paper => ({
      kind: paper.kind,
      on: paper.handedOn,
      file: handedFile(paper),
    })),
  }
}
