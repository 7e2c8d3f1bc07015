import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { answer, api, Refused } from '../api.ts'
import { ActForm, Send } from '../parts/act.tsx'
import { Choice, Tick } from '../parts/field.tsx'
import { CivilDate } from '../parts/figures.tsx'
import { named } from '../shell/place.ts'
import { useShop } from '../shop.tsx'
import { type ClosedDay, useCloseOn } from './closed-day.ts'

interface Asked {
  readonly country: string
  readonly region: string
  readonly year: string
}

const holidaysQuery = (asked: Asked) => ({
  queryKey: ['publicHolidays', asked],
  placeholderData: keepPreviousData,
  queryFn: () => answer(api.pages.publicHolidays.$get({ query: asked })),
})

/** This year and the five after it. */
const years = (today: string) =>
  Object.fromEntries(
    [0, 1, 2, 3, 4, 5].map(ahead => String(Number(today.slice(0, 4)) + ahead)).map(y => [y, y]),
  )

/** Fills in the public holidays of a country, a region and a year, after showing them. */
export function PublicHolidays({ days }: { days: readonly ClosedDay[] }) {
  const { settings, words, today } = useShop()
  const { closed } = words.shop
  const { country, locale } = settings.place
  const [asked, setAsked] = useState<Asked>({ country, region: '', year: today.slice(0, 4) })
  const { data, error } = useQuery(holidaysQuery(asked))
  const regions = Object.keys(data?.regions ?? {}).length > 0
  const set = (change: Partial<Asked>) => setAsked({ ...asked, ...change })
  return (
    <div className="form">
      <p className="quiet">{closed.fillHint}</p>
      <div className="fields">
        <Choice
          name="country"
          label={closed.country}
          choices={named('region', locale)}
          value={asked.country}
          onChange={next => set({ country: next, region: '' })}
        />
        {regions && (
          <Choice
            name="region"
            label={closed.region}
            choices={data?.regions ?? {}}
            empty={closed.wholeCountry}
            value={asked.region}
            onChange={region => set({ region })}
          />
        )}
        <Choice
          name="year"
          label={closed.year}
          choices={years(today)}
          value={asked.year}
          onChange={year => set({ year })}
        />
      </div>
      {error && (
        <p className="late">{error instanceof Refused ? error.message : words.screens.unreachable}</p>
      )}
      {data && !error && (
        <Found
          key={JSON.stringify(asked)}
          found={data.days.filter(({ onDate }) => onDate >= today)}
          entered={days}
          attribution={data.attribution}
        />
      )}
    </div>
  )
}

interface FoundProps {
  readonly found: readonly ClosedDay[]
  readonly entered: readonly ClosedDay[]
  readonly attribution: string
}

/** The holidays found, each to be left out by its tick; those entered already stand without one. */
function Found({ found, entered, attribution }: FoundProps) {
  const { closed } = useShop().words.shop
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const isEntered = ({ onDate }: ClosedDay) => entered.some(day => day.onDate === onDate)
  const chosen = found.filter(day => !isEntered(day) && !left.has(day.onDate))
  const act = useCloseOn(days => closed.filled(days.length))
  const choose = (onDate: string, yes: boolean) =>
    setLeft(new Set(yes ? [...left].filter(day => day !== onDate) : [...left, onDate]))
  return (
    <ActForm act={act} input={() => chosen} label={closed.found}>
      {found.length === 0 && <p className="quiet">{closed.nothing}</p>}
      <ul className="found-days" aria-label={closed.found}>
        {found.map(day => (
          <li key={`${day.onDate} ${day.name}`}>
            {isEntered(day) ? (
              <span className="quiet">
                <CivilDate on={day.onDate} style="long" /> · {day.name} · {closed.there}
              </span>
            ) : (
              <HolidayTick
                day={day}
                value={!left.has(day.onDate)}
                onChange={yes => choose(day.onDate, yes)}
              />
            )}
          </li>
        ))}
      </ul>
      {chosen.length > 0 && (
        <div className="buttons">
          <Send act={act} look="second">
            {closed.fill(chosen.length)}
          </Send>
        </div>
      )}
      <p className="quiet">
        <small>{attribution}</small>
      </p>
    </ActForm>
  )
}

function HolidayTick(props: { day: ClosedDay; value: boolean; onChange: (yes: boolean) => void }) {
  const { formats } = useShop()
  const { onDate, name } = props.day
  return (
    <Tick
      name={`day ${onDate}`}
      label={`${formats.longDate(onDate)} · ${name}`}
      value={props.value}
      onChange={props.onChange}
    />
  )
}
