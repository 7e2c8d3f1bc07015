import { useLocation } from 'wouter'
import { changesHands, inCash, restOf } from '../../../core/money/cash.ts'
import { type Minor, minor, minorText, parseMinor } from '../../../core/money/minor.ts'
import type { PaymentMethod } from '../../../core/vocabulary/work.ts'
import { answer, type api } from '../../api.ts'
import { useAskedAct } from '../../parts/act.tsx'
import { useEntry } from '../../parts/entry.ts'
import { Choice, DateField, DecimalField, TextField, Tick } from '../../parts/field.tsx'
import { useShop } from '../../shop.tsx'
import { ActPanel } from '../act-panel.tsx'
import { type ActProps, dueMinor } from '../repair.ts'
import { withReceipt } from '../taken.tsx'

type Payment = Parameters<typeof api.accounts.pay.$post>[0]['json']

/** The act of taking a payment: asked about with the change, the rest for the account and a deposit above what was quoted. */
function usePayment({ place }: ActProps) {
  const { words, formats } = useShop()
  const { payForm } = words.repair
  const [, navigate] = useLocation()
  return useAskedAct((ledger, json: Payment) => answer(ledger.accounts.pay.$post({ json })), {
    said: ({ number, dueMinor: left, billed }) =>
      billed
        ? payForm.said(number, formats.money(minor(Math.max(left, 0))))
        : payForm.saidDeposit(number, formats.money(minor(-left))),
    confirm: ({ method }, { amountMinor, changeMinor, toAccountMinor, aboveQuotedMinor }) => {
      const lines = [
        payForm.asked(formats.money(amountMinor), words.paymentMethods[method]),
        changeMinor > 0 && payForm.askedChange(formats.money(changeMinor)),
        toAccountMinor > 0 && payForm.askedRest(formats.money(toAccountMinor)),
        aboveQuotedMinor > 0 && payForm.askedAbove(formats.money(aboveQuotedMinor)),
      ].filter(line => line !== false)
      return {
        title: payForm.ask,
        body: lines.map(line => <p key={line}>{line}</p>),
        yesWords: payForm.send,
      }
    },
    after: ({ receiptId }) => navigate(withReceipt(place, receiptId)),
  })
}

/** What is typed as an amount, in minor units; null while it is none. */
function useTyped(text: string): Minor | null {
  const typed = parseMinor(text, useShop().settings.place.currency, '')
  return typed.ok ? typed.value : null
}

/** What a payment of this much leaves over beyond what is open; nothing before the invoice. */
function useRest({ view }: ActProps, text: string, method: PaymentMethod): Minor {
  const { settings } = useShop()
  const typed = useTyped(text)
  const step = useTyped(settings.cash.step) ?? minor(0)
  const due = minor(dueMinor(view))
  if (typed === null || !view.money.billed || method === 'account') return minor(0)
  const handed = changesHands(method === 'cash', typed, due, step)
  return restOf(handed ?? { amount: typed, rounding: minor(0) }, due)
}

/** Takes a payment, or a deposit while nothing is billed yet. It starts from what is due. */
export function Pay(props: ActProps) {
  const { view, close } = props
  const { words, formats, settings, today } = useShop()
  const { payForm } = words.repair
  const { currency } = settings.place
  const { billed, accountMinor } = view.money
  const due = minor(dueMinor(view))
  const entry = useEntry({
    amount: due > 0 ? minorText(due, currency) : '',
    method: 'card' as PaymentMethod,
    reference: '',
    tendered: '',
    onDate: today,
    restToAccount: false,
  })
  const { amount, method, tendered, onDate, restToAccount } = entry.value
  const rest = useRest(props, amount, method)
  const step = useTyped(settings.cash.step) ?? minor(0)
  const act = usePayment(props)
  const cash = method === 'cash'
  const input = () => ({
    ...entry.value,
    repairId: view.repair.id,
    tendered: (cash && tendered.trim()) || null,
    onDate: onDate || null,
    restToAccount: rest > 0 && restToAccount,
  })
  const { account, ...money } = words.paymentMethods
  const rounds = cash && due > 0 && inCash(due, step) !== due
  return (
    <ActPanel
      reserved="accounts.pay"
      title={billed ? payForm.title : payForm.depositTitle}
      act={act}
      input={input}
      send={payForm.send}
      close={close}
    >
      {accountMinor > 0 && <p className="quiet">{payForm.onAccount(formats.money(accountMinor))}</p>}
      <div className="fields form">
        <DecimalField
          label={payForm.amount}
          unit={currency}
          hint={rounds && payForm.inCash(formats.money(inCash(due, step)))}
          {...entry.at('amount')}
        />
        <Choice
          label={payForm.method}
          choices={accountMinor > 0 ? { ...money, account } : money}
          {...entry.at('method')}
        />
        {cash && (
          <DecimalField
            label={payForm.tendered}
            hint={payForm.tenderedHint}
            unit={currency}
            {...entry.at('tendered')}
          />
        )}
        <DateField label={payForm.onDate} {...entry.at('onDate')} />
        <TextField label={payForm.reference} {...entry.at('reference')} />
      </div>
      {rest > 0 && (
        <Tick
          label={payForm.rest(formats.money(rest))}
          hint={payForm.restHint}
          {...entry.at('restToAccount')}
        />
      )}
    </ActPanel>
  )
}
