import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Refused } from '../../renderer/api.ts'
import { sentOnce } from '../../renderer/parts/sent.ts'

/** A ledger that does each key once, and a line that loses what is sent or what is answered, as told for each try. */
function ledgerBehind(line: readonly ('through' | 'request lost' | 'answer lost')[]) {
  const done = new Map<string, number>()
  let tries = 0
  const send = (key: string) => async () => {
    const fate = line[tries++] ?? 'through'
    if (fate !== 'request lost') done.set(key, done.get(key) ?? done.size + 1)
    if (fate !== 'through') throw new TypeError('Failed to fetch')
    return done.get(key)
  }
  return { done, send, tries: () => tries }
}
const pauses = [0, 0, 0]

describe('an act whose answer is lost', () => {
  it('is asked for again under its key, done once, and answered as it was at first', async () => {
    const { done, send, tries } = ledgerBehind(['answer lost', 'request lost', 'answer lost', 'through'])
    const asked: string[] = []
    expect(await sentOnce(send('a'), { pauses, again: () => asked.push('again') })).toBe(1)
    expect([done.size, tries(), asked.length]).toEqual([1, 4, 3])
  })

  it('fails only when no try was answered, and may then have been done or not', async () => {
    const { done, send } = ledgerBehind(['request lost', 'request lost', 'answer lost', 'request lost'])
    await expect(sentOnce(send('a'), { pauses })).rejects.toThrow('Failed to fetch')
    expect(done.size).toBe(1)
    expect(await sentOnce(send('a'), { pauses })).toBe(1)
    expect(done.size).toBe(1)
  })

  it('is not asked for again when the ledger refused it', async () => {
    let tries = 0
    const refused = async () => {
      tries += 1
      throw new Refused([{ code: 'payment.zero', field: 'amount', message: '' }])
    }
    await expect(sentOnce(refused, { pauses })).rejects.toBeInstanceOf(Refused)
    expect(tries).toBe(1)
  })

  it('is done once whatever the line loses, however often it is pressed', async () => {
    const fate = fc.constantFrom('through' as const, 'request lost' as const, 'answer lost' as const)
    await fc.assert(
      fc.asyncProperty(fc.array(fate, { maxLength: 20 }), async line => {
        const { done, send } = ledgerBehind(line)
        for (let press = 0; press < 6; press++) {
          const answered = await sentOnce(send('a'), { pauses }).catch(() => undefined)
          if (answered !== undefined) expect(answered).toBe(1)
        }
        expect(done.size).toBe(1)
      }),
    )
  })
})
