import { type FormEvent, useState } from 'react'
import { useLocation, useSearchParams } from 'wouter'
import { type Period, type PeriodKind, periodOf } from '../../core/calendar/period.ts'
import type { Words } from '../../core/words/en/index.ts'
import { DateField } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'

type ChoiceName = keyof Words['accounts']['period']['choices']

const choices: Readonly<Record<ChoiceName, readonly [PeriodKind, number]>> = {
  month: ['month', 0],
  quarter: ['quarter', 0],
  year: ['year', 0],
  lastMonth: ['month', 1],
  lastQuarter: ['quarter', 1],
  lastYear: ['year', 1],
}

/** The period in the page's address, or this quarter (or `usual`) where it has none. */
export function usePeriod(usual: PeriodKind = 'quarter'): Period {
  const { today } = useShop()
  const [asked] = useSearchParams()
  const [from, to] = [asked.get('from'), asked.get('to')]
  return from && to ? { from, to } : periodOf(usual, today)
}

/** From which day to which: typed, or one of a few plain choices. The choice stands in the page's address. */
export function PeriodLine({ period }: { period: Period }) {
  const { words, today } = useShop()
  const said = words.accounts.period
  const [path, navigate] = useLocation()
  const [asked] = useSearchParams()
  const go = (next: Period) =>
    navigate(`${path}?${new URLSearchParams({ ...Object.fromEntries(asked), ...next })}`)
  return (
    <section className="narrowing" aria-label={said.label}>
      <FromTo key={`${period.from} ${period.to}`} period={period} onShow={go} />
      <ul className="plain-choices">
        {(Object.keys(choices) as ChoiceName[]).map(name => {
          const [kind, ago] = choices[name]
          const choice = periodOf(kind, today, ago)
          const current = choice.from === period.from && choice.to === period.to
          return (
            <li key={name}>
              <button
                type="button"
                className="plain"
                aria-current={current || undefined}
                onClick={() => go(choice)}
              >
                {said.choices[name]}
              </button>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

function FromTo({ period, onShow }: { period: Period; onShow: (period: Period) => void }) {
  const said = useShop().words.accounts.period
  const [typed, setTyped] = useState(period)
  const backwards = typed.to < typed.from
  const show = (event: FormEvent) => {
    event.preventDefault()
    if (!backwards && typed.from && typed.to) onShow(typed)
  }
  return (
    <form className="from-to" onSubmit={show} noValidate>
      <DateField
        name="from"
        label={said.from}
        value={typed.from}
        onChange={from => setTyped({ ...typed, from })}
      />
      <DateField name="to" label={said.to} value={typed.to} onChange={to => setTyped({ ...typed, to })} />
      <button type="submit" className="second">
        {said.show}
      </button>
      {backwards && typed.to && (
        <p className="late" role="alert">
          {said.backwards}
        </p>
      )}
    </form>
  )
}
