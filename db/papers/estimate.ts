import { addDays } from '../../core/calendar/civil.ts'
import { cautionsFor } from '../../core/cautions/cautions.ts'
import { minor, parseMinor } from '../../core/money/minor.ts'
import type { EstimateContents, EstimateSection } from '../../core/papers/contents.ts'
import { pricedTogether } from '../../core/pricing/together.ts'
import type { Settings } from '../../core/shop/settings.ts'
import type { Read } from '../file/ledger.ts'
import { clockRow } from '../rows/register-rows.ts'
import { agreedLimit } from '../rules/agreed-limit.ts'
import { accepted } from '../rules/checked-in.ts'
import { type EstimateRow, estimatePaperLines, estimatePriced } from '../rules/estimate-rows.ts'
import type { RepairRow } from '../rules/facts.ts'
import { paperClock, paperHead } from '../rules/issue.ts'

/** One repair and what the estimate says of it. */
export interface Estimated {
  readonly estimate: EstimateRow
  readonly repair: RepairRow
}

function sectionOf(read: Read, { estimate, repair }: Estimated, currency: string): EstimateSection {
  const agreed = estimate.supplement ? agreedLimit(read, repair.id) : null
  const clock = paperClock(read, repair.clockId)
  return {
    repairNumber: String(repair.number),
    ...(clock ? { clock } : {}),
    supplement: estimate.supplement,
    lines: estimatePaperLines(read, estimate.id),
    priced: estimatePriced(read, estimate, currency),
    ...(agreed === null ? {} : { agreedBefore: agreed }),
    ...(estimate.highMinor === null ? {} : { range: { low: estimate.totalMinor, high: estimate.highMinor } }),
    ...(repair.estimatedOn ? { estimatedOn: repair.estimatedOn } : {}),
    cautions: cautionsFor(clockRow(read, repair.clockId)),
  }
}

/** What the whole may come to, where that is open for any of the repairs. */
function rangeOf(sections: readonly EstimateSection[]): Pick<EstimateContents, 'range'> {
  if (!sections.some(({ range }) => range)) return {}
  const sum = (of: (one: EstimateSection) => number) => minor(sections.reduce((all, one) => all + of(one), 0))
  const low = sum(({ priced }) => priced.taxInclusive)
  return { range: { low, high: sum(({ priced, range }) => range?.high ?? priced.taxInclusive) } }
}

/** On one repair its section is the paper; on several each stands by itself and the paper's figures are the sums. */
function combined(sections: readonly EstimateSection[]) {
  const [first] = sections
  if (sections.length === 1 && first) {
    const { repairNumber: _, clock: __, ...whole } = first
    return whole
  }
  return {
    sections,
    supplement: sections.every(({ supplement }) => supplement),
    lines: sections.flatMap(({ lines }) => lines),
    priced: accepted(pricedTogether(sections.map(({ priced }) => priced))),
    ...rangeOf(sections),
    cautions: [],
  }
}

/** What an estimate says on the day it is sent, the repair it is numbered by first. */
export function estimateContents(
  read: Read,
  settings: Settings,
  today: string,
  all: readonly [Estimated, ...Estimated[]],
): Omit<EstimateContents, 'number'> {
  const [{ estimate, repair }] = all
  const { currency } = settings.place
  const { overrunPercent, overrunAmount, validDays } = settings.estimate
  const alone = all.length === 1
  return {
    ...paperHead(read, settings, today, { ownerId: repair.ownerId, ...(alone ? { repair } : {}) }),
    kind: 'estimate',
    version: estimate.version,
    ...combined(all.map(one => sectionOf(read, one, currency))),
    tax: estimate.tax,
    validUntil: addDays(today, validDays),
    limit: {
      overrunPercent,
      overrun: accepted(parseMinor(overrunAmount, currency, 'estimate.overrunAmount')),
    },
    ...(estimate.remark ? { notes: estimate.remark } : {}),
  }
}
