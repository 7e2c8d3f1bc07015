import { useEffect, useState } from 'react'
import { localOf } from '../../core/calendar/zone.ts'
import { answer, api } from '../api.ts'
import { ActForm, Send, useAct } from '../parts/act.tsx'
import { useEntry } from '../parts/entry.ts'
import { TextField } from '../parts/field.tsx'
import { More } from '../parts/pane.tsx'
import { useShop } from '../shop.tsx'
import type { Shelf } from './shelf.ts'

/** The present instant, anew each second. */
function useNow(): string {
  const [now, setNow] = useState(() => new Date().toISOString())
  useEffect(() => {
    const tick = setInterval(() => setNow(new Date().toISOString()), 1000)
    return () => clearInterval(tick)
  }, [])
  return now
}

function Ticking() {
  const { settings } = useShop()
  const now = useNow()
  return (
    <b className="ticking">
      {localOf(now, settings.place.timeZone).slice(11)}:{now.slice(17, 19)}
    </b>
  )
}

/** What this computer's clock shows, and when it was last compared with a reference: readings are only as good as that. */
export function ComputerClock({ check }: { check: Shelf['clockCheck'] }) {
  const { words, formats } = useShop()
  const { computer } = words.shelf
  return (
    <div className="computer">
      <p>
        {computer.label} <Ticking />{' '}
        <small className="quiet">
          {check
            ? computer.checked(
                formats.signedSeconds(check.errorMs / 1000),
                check.reference,
                formats.instant(check.at),
              )
            : computer.unchecked}
        </small>
      </p>
      <More label={computer.compare}>
        <Compare />
      </More>
    </div>
  )
}

function Compare() {
  const { words, formats } = useShop()
  const { computer } = words.shelf
  const entry = useEntry({ error: '', reference: '' })
  const act = useAct(
    (input: { error: string; reference: string }) => answer(api.shelf.compareClock.$post({ json: input })),
    {
      said: ({ errorMs }) => computer.said(formats.signedSeconds(errorMs / 1000)),
      after: () => entry.reset(),
    },
  )
  return (
    <ActForm act={act} input={() => entry.value} label={computer.compare}>
      <div className="fields">
        <TextField label={computer.error} hint={computer.errorHint} {...entry.at('error')} />
        <TextField label={computer.reference} hint={computer.referenceHint} {...entry.at('reference')} />
      </div>
      <div className="buttons">
        <Send act={act}>{computer.send}</Send>
      </div>
    </ActForm>
  )
}
