import { useState } from 'react'
import { answer, api } from '../../api.ts'
import { ActForm, Send, useAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { TextField } from '../../parts/field.tsx'
import type { Repair } from '../../repair/repair.ts'
import { useShop } from '../../shop.tsx'
import { Photographs } from './photographs.tsx'

type Photograph = Repair['photographs'][number]

interface PhotographsOfProps {
  readonly what: string
  readonly photographs: readonly Photograph[]
  /** The clock is in the shop, so that a wrong one may be struck out. */
  readonly canStrike?: boolean
}

/** Photographs of a repair as they are on record, with when they were taken; a wrong one can be struck out. */
export function PhotographsOf({ what, photographs, canStrike = false }: PhotographsOfProps) {
  return (
    <Photographs
      what={what}
      photographs={photographs.map(one => ({
        key: one.id,
        hash: one.hash,
        below: <Below photograph={one} what={what} canStrike={canStrike} />,
      }))}
    />
  )
}

function Below(props: { photograph: Photograph; what: string; canStrike: boolean }) {
  const { photograph, what, canStrike } = props
  const { condition, screens } = useShop().words
  const { id, moment, remark, struckReason } = photograph
  return (
    <>
      <small className={struckReason === null ? undefined : 'struck'}>
        {[condition.moments[moment], remark].filter(Boolean).join(', ')}
      </small>
      {struckReason !== null && <small className="quiet">{screens.struck(struckReason)}</small>}
      {struckReason === null && canStrike && <StrikePhotograph useId={id} what={what} />}
    </>
  )
}

/** Strikes a photograph out with a reason; opened by a quiet button below it. */
function StrikePhotograph({ useId, what }: { useId: number; what: string }) {
  const { condition, screens } = useShop().words
  const [open, setOpen] = useState(false)
  const entry = useEntry({ reason: '' })
  const label = condition.strike.of(what)
  const act = useAct(
    (input: { useId: number; reason: string }) => answer(api.photographs.strike.$post({ json: input })),
    { said: () => condition.strike.said, after: () => setOpen(false) },
  )
  if (!open)
    return (
      <button type="button" className="plain" aria-label={label} onClick={() => setOpen(true)}>
        {condition.strike.act}
      </button>
    )
  return (
    <ActForm act={act} input={() => ({ useId, ...entry.value })} focusFirst label={label}>
      <TextField label={condition.strike.reason} {...entry.at('reason')} />
      <div className="buttons">
        <Send act={act}>{condition.strike.send}</Send>
        <button type="button" className="second" onClick={() => setOpen(false)}>
          {screens.form.no}
        </button>
      </div>
    </ActForm>
  )
}
