import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { describe, expect, it } from 'vitest'
import { DoneBefore, fetchPatiently, Refused, type ShownProblem } from '../../renderer/api.ts'
import { ended, type Line, pressed, Sending, type Sent, Unanswered } from '../../renderer/parts/sent.ts'

type Words = { readonly amount: string }
const five: Words = { amount: '5.00' }
const six: Words = { amount: '6.00' }
const refusal = (code: ShownProblem['code']) => new Refused([{ code, field: '', message: code }])
const lost = () => new TypeError('Failed to fetch')

describe('what a press leads to', () => {
  const key = 'key-1'
  const unknown: Sent<Words> = { at: 'unknown', key, input: five }

  it('is the act under the key of its form while nothing is on its way', () => {
    const step = { kind: 'send', key, input: five, lostBefore: false }
    expect(pressed({ at: 'rest', key }, five)).toEqual(step)
  })

  it('is nothing while an answer is awaited', () => {
    expect(pressed({ at: 'sent', key, input: five }, five)).toBeNull()
    expect(pressed({ at: 'sent', key, input: five }, six)).toBeNull()
  })

  it('is the same act under the same key where nobody knows whether it was done', () => {
    expect(pressed(unknown, { ...five })).toEqual({ kind: 'send', key, input: five, lostBefore: true })
  })

  it('is a question what became of the words that were sent where others are typed since', () => {
    expect(pressed(unknown, six)).toEqual({ kind: 'ask', key, input: five, lostBefore: true })
  })

  it('has a new key only once the act was done', () => {
    const step = { kind: 'send', key, input: five, lostBefore: false } as const
    const standing = (end: Parameters<typeof ended>[1]) => ended(step, end, () => 'key-2')
    expect(standing('done')).toEqual({ at: 'rest', key: 'key-2' })
    expect(standing('refused')).toEqual({ at: 'rest', key })
    expect(standing('not done')).toEqual({ at: 'rest', key })
    expect(standing('lost')).toEqual(unknown)
  })
})

/** A form with keys key-1, key-2 …, and a line that answers what it is told, one after the other. */
function formOn(...answers: (string | Error)[]) {
  const sent: string[] = []
  let keys = 0
  const form = new Sending<Words>(() => `key-${++keys}`)
  const next =
    (how: string) =>
    async (key: string, { amount }: Words) => {
      sent.push(`${how} ${amount} ${key}`)
      const answer = answers.shift() ?? 'nothing more to answer'
      if (answer instanceof Error) throw answer
      return answer
    }
  const line: Line<Words, string> = {
    send: next('send'),
    attempt: next('try'),
    again: () => sent.push('again'),
    pausesMs: [0],
  }
  const press = async (input: Words) => {
    const step = form.press(input)
    return step ? form.carry(step, line).catch((error: Error) => error) : 'ignored'
  }
  return { form, press, sent }
}

describe('a form whose answer is lost', () => {
  it('asks again by itself under the same key, and learns what was done', async () => {
    const { press, sent, form } = formOn(lost(), 'R0001')
    expect(await press(five)).toEqual({ input: five, result: 'R0001', changed: false })
    expect(sent).toEqual(['send 5.00 key-1', 'again', 'send 5.00 key-1'])
    expect(form.unknown).toBe(false)
  })

  it('does not know where no answer comes at all; pressed again it asks for that very act', async () => {
    const { press, sent, form } = formOn(lost(), lost(), 'R0001', 'R0002')
    expect(await press(five)).toBeInstanceOf(Unanswered)
    expect(form.unknown).toBe(true)
    expect(await press(five)).toEqual({ input: five, result: 'R0001', changed: false })
    await press(five)
    expect(sent.filter(one => one !== 'again').slice(2)).toEqual(['send 5.00 key-1', 'send 5.00 key-2'])
  })

  it('whose words were changed since asks without doing anything, and tells what was done with the old ones', async () => {
    const { press, sent } = formOn(lost(), lost(), new DoneBefore('R0001'), 'R0002')
    await press(five)
    expect(await press(six)).toEqual({ input: five, result: 'R0001', changed: true })
    await press(six)
    expect(sent.filter(one => one !== 'again').slice(2)).toEqual(['try 5.00 key-1', 'send 6.00 key-2'])
  })

  it('whose words were changed since sends the new ones under the same key where the old ones were not done', async () => {
    for (const notDone of ['R0001', refusal('payment.zero')]) {
      const { press, sent } = formOn(lost(), lost(), notDone, 'R0001')
      await press(five)
      expect(await press(six)).toBeNull()
      expect(await press(six)).toEqual({ input: six, result: 'R0001', changed: false })
      expect(sent.filter(one => one !== 'again').slice(2)).toEqual(['try 5.00 key-1', 'send 6.00 key-1'])
    }
  })

  it('believes a refusal, and keeps its key for the corrected words', async () => {
    const { press, sent } = formOn(refusal('payment.zero'), 'R0001')
    expect(await press(five)).toMatchObject({ problems: [{ code: 'payment.zero' }] })
    await press(six)
    expect(sent).toEqual(['send 5.00 key-1', 'send 6.00 key-1'])
  })

  it('still does not know where it is then turned away before its act was looked at', async () => {
    for (const code of ['request.keyMissing', 'ledger.notOpen'] as const) {
      const { press, form } = formOn(lost(), refusal(code))
      const told = await press(five)
      expect(told).toBeInstanceOf(Unanswered)
      expect(told).toMatchObject({ problems: [{ code }] })
      expect(form.unknown).toBe(true)
    }
    const { press, form } = formOn(refusal('ledger.notOpen'))
    expect(await press(five)).toBeInstanceOf(Refused)
    expect(form.unknown).toBe(false)
  })

  it('ignores a second press while the first is on its way', async () => {
    const { press, sent } = formOn('R0001')
    const [first, second] = await Promise.all([press(five), press(five)])
    expect([first, second]).toEqual([{ input: five, result: 'R0001', changed: false }, 'ignored'])
    expect(sent).toHaveLength(1)
  })
})

describe('an act that is sent to a ledger which never answers', () => {
  it('is given up so that it can be asked for again; a question without a key waits', async () => {
    const server = createServer(() => undefined)
    await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve))
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
    const patiently = fetchPatiently(1)
    const acted = patiently(address, { method: 'POST', headers: { 'Idempotency-Key': '"f1e2d3c4"' } })
    await expect(acted).rejects.toMatchObject({ name: 'TimeoutError' })
    const asked = patiently(address).catch(() => 'cut off')
    const first = await Promise.race([asked, acted.catch(() => 'the act was given up before')])
    expect(first).toBe('the act was given up before')
    server.closeAllConnections()
    server.close()
    expect(await asked).toBe('cut off')
  })
})
