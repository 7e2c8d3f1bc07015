import { useState } from 'react'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { TextField } from '../../parts/field.tsx'
import { ComebackCover } from '../../register/comeback-cover.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import type { ActProps } from '../repair.ts'

/** Decides anew whether a comeback is covered, as when the strip shows what its fault comes from. */
export function DecideCover({ view: { repair, comeback }, close }: ActProps) {
  const { coverForm } = useShop().words.repair
  const [said, setSaid] = useState({ covered: repair.covered, causes: repair.comebackCauses })
  const [goodwill, setGoodwill] = useState(repair.goodwill)
  const seen = { covered: repair.covered, causes: [...repair.comebackCauses], goodwill: repair.goodwill }
  const act = useAskedAct(
    (ledger, input: Parameters<typeof api.counter.decideCover.$post>[0]['json']) =>
      answer(ledger.counter.decideCover.$post({ json: input })),
    {
      said: ({ covered }) => coverForm.said(covered),
      confirm: ({ covered }) => ({
        title: coverForm.ask(covered),
        body: <p>{coverForm.asked(covered)}</p>,
        yesWords: coverForm.send,
      }),
      after: close,
    },
  )
  return (
    <ActPanel
      title={coverForm.title}
      act={act}
      input={() => ({
        repairId: repair.id,
        ...said,
        covered: said.covered || goodwill.trim() !== '',
        goodwill,
        seen,
      })}
      send={coverForm.send}
      close={close}
    >
      {comeback && (
        <ComebackCover
          {...comeback}
          {...said}
          onChange={(causes, covered) => setSaid({ causes: [...causes], covered })}
        />
      )}
      {!said.covered && (
        <TextField
          name="goodwill"
          label={coverForm.goodwill}
          hint={coverForm.goodwillHint}
          value={goodwill}
          onChange={setGoodwill}
        />
      )}
    </ActPanel>
  )
}
