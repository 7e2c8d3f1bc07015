import { spawn } from 'node:child_process'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { openLedger } from '../../db/file/ledger.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { answer, type Refused } from '../../renderer/api.ts'
import { type Line, Sending, Unanswered } from '../../renderer/parts/sent.ts'
import { random } from '../chance.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { invoicedRepair } from './billed-shop.ts'
import { openTestShop } from './handler-fixture.ts'

interface Payment {
  readonly repairId: number
  readonly amount: string
  readonly method: 'card'
}

const payment = (input: Payment, key: string, headers: Record<string, string> = {}): RequestInit => ({
  method: 'POST',
  headers: { 'Content-Type': 'application/json', 'Idempotency-Key': `"${key}"`, ...headers },
  body: JSON.stringify(input),
})

/** Serves the ledger in a process of its own, which is killed once it has done an act and before it answers. */
async function killedBeforeAnswering(file: string, at: string, input: Payment, key: string): Promise<void> {
  const program = join(import.meta.dirname, 'pay-and-die.ts')
  const serving = spawn(process.execPath, [program, file, at], { stdio: ['ignore', 'pipe', 'inherit'] })
  const ended = new Promise(resolve => serving.on('exit', (_, signal) => resolve(signal)))
  const [said] = await serving.stdout.setEncoding('utf8').take(1).toArray()
  const { port, key: runKey } = JSON.parse(said)
  const sent = payment(input, key, { Authorization: `Bearer ${runKey}` })
  await expect(fetch(`http://127.0.0.1:${port}/api/accounts/pay`, sent)).rejects.toThrow('fetch failed')
  expect(await ended).toBe('SIGKILL')
}

it('a payment whose program was killed between entering and answering is one receipt when it is sent again', async () => {
  const shop = await openTestShop()
  const { id: repairId } = await invoicedRepair(shop)
  shop.ledger.close()
  const input: Payment = { repairId, amount: '5.00', method: 'card' }
  await killedBeforeAnswering(shop.file, shop.clock.at, input, 'f1e2d3c4')
  const ledger = openLedger(shop.file, { migrations, now: () => shop.clock.at, random })
  const handle = createHandler({ ledger, now: () => shop.clock.at, pages: '.' })
  const pay = async () =>
    (await handle(new Request('http://ledger/api/accounts/pay', payment(input, 'f1e2d3c4')))).json()
  const first = await pay()
  expect(first).toMatchObject({ number: 'R0001' })
  expect(await pay()).toEqual(first)
  const receipts = await handle(new Request('http://ledger/api/pages/documents?kind=receipt'))
  expect((await receipts.json()).rows).toHaveLength(1)
  ledger.close()
  shop.close()
}, 60_000)

/** What becomes of what is sent: late, it comes to the ledger after the next thing sent, and its answer to nobody. */
type Fate = 'through' | 'request lost' | 'answer lost' | 'late'

/** A line to the ledger on which each thing sent has its fate, and goes through once these are used up. */
function lossyLine(handle: (request: Request) => Promise<Response>, fates: Fate[]) {
  let overdue: (() => Promise<Response>)[] = []
  const deliverLate = async () => {
    const coming = overdue
    overdue = []
    for (const come of coming) await come()
  }
  const pay = async (key: string, input: Payment, headers: Record<string, string> = {}) => {
    const send = () => handle(new Request('http://ledger/api/accounts/pay', payment(input, key, headers)))
    const fate = fates.shift() ?? 'through'
    const answered = fate === 'through' || fate === 'answer lost' ? await send() : undefined
    await deliverLate()
    if (fate === 'late') overdue.push(send)
    if (fate !== 'through' || !answered) throw new TypeError('Failed to fetch')
    return answer(Promise.resolve(answered)) as Promise<{ number: string }>
  }
  const line: Line<Payment, { number: string }> = {
    send: pay,
    attempt: (key, input) => pay(key, input, { 'Countwheel-Trial': '1' }),
    pausesMs: [0],
  }
  return { line, deliverLate }
}

it('payments are made as often as the form says, whatever the line loses, delays or brings twice', async () => {
  const shop = await openTestShop()
  const { id: repairId } = await invoicedRepair(shop)
  const receipts = () =>
    shop.ledger.read.get<{ n: number }>("SELECT count(*) AS n FROM documents WHERE kind = 'receipt'").n
  let keys = 0
  const openForm = () => new Sending<Payment>(() => `form-key-${++keys}`)

  /** Presses the form's button, whose words are changed now and then, until it was told of `amounts` many payments. */
  const pressed = async (fates: Fate[], amounts: readonly string[]) => {
    const { line, deliverLate } = lossyLine(shop.handle, [...fates])
    let form = openForm()
    let told = 0
    for (let press = 0; told < amounts.length; press++) {
      const input: Payment = { repairId, amount: amounts[press % amounts.length] ?? '', method: 'card' }
      const step = form.press(input)
      if (!step) throw new Error('pressed while an answer is awaited')
      try {
        if (await form.carry(step, line)) told += 1
      } catch (error) {
        if (error instanceof Unanswered) continue
        // Words that came late were entered: the form says so, and is opened anew.
        expect((error as Refused).problems.map(({ code }) => code)).toEqual(['act.keyUsed'])
        told += 1
        form = openForm()
      }
    }
    await deliverLate()
    return told
  }

  const fate = fc.constantFrom<Fate>('through', 'request lost', 'answer lost', 'late')
  const amounts = fc.array(fc.constantFrom('0.01', '0.02', '0.03'), { minLength: 1, maxLength: 5 })
  await fc.assert(
    fc.asyncProperty(fc.array(fate, { maxLength: 12 }), amounts, async (fates, amounts) => {
      const before = receipts()
      const told = await pressed(fates, amounts)
      expect(receipts() - before).toBe(told)
    }),
    { numRuns: 60 },
  )
  shop.close()
}, 60_000)
