import { useState } from 'react'
import { Field } from '../parts/field.tsx'
import { useShop } from '../shop.tsx'
import { SettingsForm, useChange } from './settings-form.tsx'
import { keptWeek, pathOf, type Stretch, type TypedWeek, typedWeek, withStretch } from './week.ts'

/** When the shop is open in an ordinary week. */
export function Hours() {
  const { settings, words } = useShop()
  const { hours: said, groups, saved } = words.shop
  const [week, setWeek] = useState(() => typedWeek(settings.hours.week))
  const act = useChange(saved(groups.hours))
  return (
    <SettingsForm
      intro={said.intro}
      label={groups.hours}
      act={act}
      input={() => ({ hours: { week: keptWeek(week) } })}
    >
      <div className="week">
        {said.weekdays.map((name, day) => (
          <Day key={name} name={name} day={day} week={week} onWeek={setWeek} />
        ))}
      </div>
    </SettingsForm>
  )
}

interface DayProps {
  readonly name: string
  /** 0 for Monday. */
  readonly day: number
  readonly week: TypedWeek
  readonly onWeek: (week: TypedWeek) => void
}

function Day({ name, day, week, onWeek }: DayProps) {
  const said = useShop().words.shop.hours
  return (
    <fieldset className="week-day">
      <legend>{name}</legend>
      {week[day]?.map((stretch, index) => {
        const field = pathOf(week, day, index)
        const change = (part: Partial<Stretch>) => onWeek(withStretch(week, day, index, part))
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the stretches of a day have no other name than their place
          <span key={index} className="stretch">
            <Time
              name={`${field}.from`}
              label={said.from(name, index + 1)}
              value={stretch.from}
              onChange={from => change({ from })}
            />
            <span aria-hidden="true">{said.until}</span>
            <Time
              name={`${field}.to`}
              label={said.to(name, index + 1)}
              value={stretch.to}
              onChange={to => change({ to })}
            />
          </span>
        )
      })}
    </fieldset>
  )
}

/** A time of day, typed or picked. */
function Time(props: { name: string; label: string; value: string; onChange: (value: string) => void }) {
  return (
    <Field name={props.name} label={props.label} hideLabel>
      {control => (
        <input
          {...control}
          type="time"
          value={props.value}
          onChange={event => props.onChange(event.target.value)}
        />
      )}
    </Field>
  )
}
