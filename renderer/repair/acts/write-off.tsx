import { minor, minorText } from '../../../core/money/minor.ts'
import type { WriteOffCause } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { type ActProps, dueMinor } from '../repair.ts'

/** Gives up what is still owed on the repair, or a part of it. */
export function WriteOff({ view, close }: ActProps) {
  const { words, formats, settings, today } = useShop()
  const { writeOffForm } = words.repair
  const { currency } = settings.place
  const due = dueMinor(view)
  const entry = useEntry({
    amount: minorText(minor(due), currency),
    cause: 'bad-debt' as WriteOffCause,
    reason: '',
    onDate: today,
  })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.writeOff.$post>[0]['json']) =>
      answer(ledger.accounts.writeOff.$post({ json })),
    {
      said: ({ dueMinor: left }) => writeOffForm.said(formats.money(left)),
      confirm: (_, { dueMinor: left }) => ({
        title: writeOffForm.ask,
        body: <p>{writeOffForm.asked(formats.money(minor(due - left)))}</p>,
        yesWords: writeOffForm.send,
      }),
      after: close,
    },
  )
  const { 'bad-debt': badDebt, courtesy } = words.writeOffKinds
  return (
    <ActPanel
      reserved="accounts.writeOff"
      title={writeOffForm.title}
      act={act}
      input={() => ({ ...entry.value, repairId: view.repair.id, onDate: entry.value.onDate || null })}
      send={writeOffForm.send}
      close={close}
    >
      <p className="quiet">{writeOffForm.advice}</p>
      <div className="fields form">
        <DecimalField label={writeOffForm.amount} unit={currency} {...entry.at('amount')} />
        <Choice
          label={writeOffForm.cause}
          choices={{ 'bad-debt': badDebt, courtesy }}
          {...entry.at('cause')}
        />
        <TextField label={writeOffForm.reason} {...entry.at('reason')} />
        <DateField label={writeOffForm.onDate} {...entry.at('onDate')} />
      </div>
    </ActPanel>
  )
}

/** Takes back all that was written off on the repair: it is owed again. */
export function TakeBackWriteOff({ view, close }: ActProps) {
  const { words, formats } = useShop()
  const { takeBackForm } = words.repair
  const entry = useEntry({ reason: '' })
  const act = useAskedAct(
    (ledger, json: Parameters<typeof api.accounts.takeBackWriteOff.$post>[0]['json']) =>
      answer(ledger.accounts.takeBackWriteOff.$post({ json })),
    {
      said: ({ dueMinor: left }) => takeBackForm.said(formats.money(left)),
      confirm: () => ({
        title: takeBackForm.ask,
        body: <p>{takeBackForm.asked(formats.money(view.money.balance.writtenOff))}</p>,
        yesWords: takeBackForm.send,
      }),
      after: close,
    },
  )
  return (
    <ActPanel
      reserved="accounts.takeBackWriteOff"
      title={takeBackForm.title}
      act={act}
      input={() => ({ repairId: view.repair.id, ...entry.value })}
      send={takeBackForm.send}
      close={close}
    >
      <TextField label={takeBackForm.reason} {...entry.at('reason')} />
    </ActPanel>
  )
}
