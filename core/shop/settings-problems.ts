import { workCalendar } from '../calendar/opening.ts'
import { parseNonNegative } from '../decimal/decimal.ts'
import { parseAmount } from '../money/minor.ts'
import { lineKinds } from '../pricing/kinds/index.ts'
import { priceBookProblems } from '../pricing/price-book-problems.ts'
import type { Tax } from '../pricing/price-input.ts'
import { type Problem, problem, problemsOf, problemsUnder as under } from '../problems.ts'
import { goings, isLimitPerDay } from '../run-in/limits.ts'
import { policyProblems } from '../run-in/plan-problems.ts'
import { durations } from '../vocabulary/clock.ts'
import { scopes } from '../vocabulary/work.ts'
import { termProblems } from '../warranty/term.ts'
import type { Settings, SettingsGroup } from './settings.ts'

/** Some groups of settings, each whole. */
export type SomeSettings = { readonly [G in SettingsGroup]?: Settings[G] | undefined }

/** What is wrong with groups of settings as the shop would go by them, beyond their shape; amounts in `currency`. Fields are paths such as `hours.week[0].to`. */
export function settingsProblems(some: SomeSettings, currency: string): Problem[] {
  const { cash, hours, tax, prices, estimate, warranty, runIn, limits } = some
  return [
    ...(hours ? under('hours', problemsOf(workCalendar({ week: hours.week, holidays: [] }))) : []),
    ...(cash ? problemsOf(parseAmount(cash.step, currency, 'cash.step')) : []),
    ...(tax ? under('tax', taxProblems(tax)) : []),
    ...(prices ? under('prices', priceBookProblems(prices, currency)) : []),
    ...(estimate ? under('estimate', estimateProblems(estimate, currency)) : []),
    ...(warranty ? under('warranty', warrantyProblems(warranty)) : []),
    ...(runIn ? under('runIn', runInProblems(runIn)) : []),
    ...(limits ? under('limits', limitsProblems(limits)) : []),
  ]
}

const taxProblems = ({ byKind }: Settings['tax']): Problem[] =>
  (Object.keys(lineKinds) as (keyof typeof lineKinds)[]).flatMap(kind =>
    byKind[kind].flatMap((one, i) => taxLineProblems(one, byKind[kind].slice(0, i), `byKind.${kind}[${i}]`)),
  )

function taxLineProblems({ code, rate }: Tax, before: readonly Tax[], field: string): Problem[] {
  const twice = before.some(other => other.code === code)
  return [
    ...problemsOf(parseNonNegative(rate, `${field}.rate`)),
    ...(twice ? [problem('price.taxTwice', `${field}.code`, { tax: code })] : []),
  ]
}

const estimateProblems = (
  { overrunPercent, overrunAmount }: Settings['estimate'],
  currency: string,
): Problem[] => [
  ...problemsOf(parseNonNegative(overrunPercent, 'overrunPercent')),
  ...problemsOf(parseAmount(overrunAmount, currency, 'overrunAmount')),
]

/** The lengths of the terms; the day they start does not matter to them. */
const warrantyProblems = ({ terms, convention }: Settings['warranty']): Problem[] =>
  scopes.flatMap(scope => {
    const term = terms[scope]
    return term ? under(`terms.${scope}`, termProblems({ ...term, convention, start: '2000-01-01' })) : []
  })

const runInProblems = (runIn: Settings['runIn']): Problem[] =>
  durations.flatMap(duration =>
    policyProblems(runIn[duration], duration).map(one => ({
      ...one,
      field: one.field.replace(/^policy/, duration),
    })),
  )

const limitsProblems = (limits: Settings['limits']): Problem[] =>
  goings.flatMap(going =>
    (['perDay', 'steady'] as const).flatMap(which =>
      isLimitPerDay(Number(limits[going][which])) ? [] : [problem('runIn.limitPerDay', `${going}.${which}`)],
    ),
  )
