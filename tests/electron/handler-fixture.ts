import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inTodaysShape } from '../../core/acts/versions.ts'
import { openingSettings } from '../../core/shop/defaults.ts'
import { openLedger } from '../../db/file/ledger.ts'
import { stagedChance } from '../../electron/day/demo-shop.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { mustBeSaid } from './said.ts'

/** An answer with its status and JSON. */
export interface Answer {
  readonly status: number
  // biome-ignore lint/suspicious/noExplicitAny: tests read whatever the handler answered
  readonly body: any
}

/** Tests write inputs as they were first shipped where they say nothing of what was seen. */
export const asToday = (act: string, input: unknown): unknown =>
  typeof input === 'object' && input !== null && !isToday(act, input)
    ? inTodaysShape(act, 1, { ...input })
    : input

/** Acts whose inputs tests write as they are today: what they say is told otherwise now. */
const writtenAsToday = new Set(['shelf.read', 'shelf.correct', 'shelf.move'])

/** What was seen is told in a form that only today's inputs have. */
const isToday = (act: string, input: object) =>
  writtenAsToday.has(act) || ('seen' in input && (input.seen === null || typeof input.seen === 'object'))

/** The invented shop of the tests. */
export const testSettings = openingSettings({
  name: 'Thornbury Clock Bench',
  addressLines: ['4 Weir Lane', 'Thornbury'],
  country: 'GB',
  locale: 'en-GB',
  timeZone: 'Europe/London',
  currency: 'GBP',
  tax: { code: 'VAT', rate: '20' },
  benchRate: '48.00',
})

/**
 * A handler on a real ledger file of its own, with a clock that stands where the test puts it: it is doubted, as a computer's is, only
 * where `played` is off.
 */
export function freshHandler(start = '2027-03-01T09:20:00.000Z', { played = true } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'countwheel-'))
  const file = join(folder, 'shop.countwheel')
  const clock = { at: start, person: null as number | null }
  const migrations = join(import.meta.dirname, '../../migrations')
  const chance = stagedChance(random)
  const ledger = openLedger(file, { migrations, now: () => clock.at, random: chance.random })
  const answered = createHandler({ ledger, now: () => clock.at, pages: folder, played })
  const handle = async (request: Request): Promise<Response> => {
    const response = await answered(request)
    if (response.headers.get('Content-Type')?.startsWith('application/json'))
      mustBeSaid(await response.clone().json())
    return response
  }

  const ask = async (path: string, init: RequestInit = {}): Promise<Answer> => {
    const response = await handle(new Request(`http://ledger${path}`, init))
    const text = await response.text()
    return {
      status: response.status,
      body: text.startsWith('{') || text.startsWith('[') ? JSON.parse(text) : text,
    }
  }

  /** Asks for an act, `area.verb`, under a key where one is given. */
  const ask_ = (act: string, input: unknown, key?: string): Promise<Answer> =>
    ask(`/api/${act.replace('.', '/')}`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        ...(clock.person === null ? {} : { 'Countwheel-Person': String(clock.person) }),
        ...(key === undefined ? {} : { 'Idempotency-Key': `"${key}"` }),
      },
      body: JSON.stringify(asToday(act, input)),
    })

  return {
    file,
    folder,
    ledger,
    handle,
    clock,
    setSalt: chance.setSalt,
    ask,
    tryAct: ask_,
    /** Performs an act that must succeed and returns its result. */
    async act(name: string, input: unknown) {
      const { status, body } = await ask_(name, input)
      if (status !== 200) throw new Error(`${name}: ${JSON.stringify(body)}`)
      return body
    },
    /** A view that must be there. */
    async view(path: string) {
      const { status, body } = await ask(`/api/pages/${path}`)
      if (status !== 200) throw new Error(`${path}: ${JSON.stringify(body)}`)
      return body
    },
    close() {
      ledger.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

export type Shop = ReturnType<typeof freshHandler>

/** A fresh ledger whose shop is open; the person who opened it acts. */
export async function openTestShop(start?: string, how?: { played: boolean }): Promise<Shop> {
  const shop = freshHandler(start, how)
  const opened = await shop.act('shop.open', {
    settings: testSettings,
    person: 'Ines Marrow',
    firstRepairNumber: 2201,
  })
  shop.clock.person = opened.personId
  return shop
}

/** A new owner as typed at the counter. */
export const rosamund = {
  name: 'Rosamund Pell',
  address: '11 Quay Street\nThornbury',
  contacts: [{ kind: 'phone', value: '020 7946 0018', preferred: true }],
}

/** A three-train bracket clock of an invented maker. */
export const bracketClock = {
  form: 'bracket',
  maker: 'J. Ollerenshaw, Thornbury',
  serial: 'OL-2214',
  trains: 3,
  power: 'spring',
  duration: '8-day',
  escapement: 'recoil',
  strike: 'rack',
  chime: 'four-quarter',
  chimeCorrects: true,
  dial: 'silvered',
}

const likelyIds = async (shop: Shop, path: string, typed: Record<string, string>): Promise<number[]> => {
  const { body } = await shop.ask(`/api/find/${path}?${new URLSearchParams(typed)}`)
  return body.likely.map(({ id }: { id: number }) => id)
}

/**
 * Takes in Rosamund's bracket clock; `more` adds to or replaces what is said. A further time in one shop it is another owner of that
 * name with another such clock.
 */
export async function takeInPell(shop: Shop, more: Record<string, unknown> = {}) {
  const { name, contacts } = rosamund
  const typed = { name, phone: contacts[0]?.value ?? '', email: '' }
  const { maker, serial } = bracketClock
  return shop.act('counter.takeIn', {
    owner: { ...rosamund, otherThan: await likelyIds(shop, 'owners', typed) },
    clock: { ...bracketClock, otherThan: await likelyIds(shop, 'clocks', { maker, serial }) },
    fault: 'Stops at the quarter.',
    scope: 'service',
    estimatedOn: '2027-03-26',
    signedInBy: 'Rosamund Pell',
    condition: [
      { component: 'dial', finish: 'silver-coloured', grade: 'marked', remark: 'Scratch at four.' },
    ],
    belongings: [
      { item: 'pendulum', custody: 'received' },
      { item: 'key', custody: 'kept' },
    ],
    ...more,
  })
}

/** A labour line and a part line. */
export const estimateLines = [
  { kind: 'labour', description: 'Overhaul of three trains', quantity: '7.5', unit: '48.00' },
  { kind: 'part', description: 'Mainspring', quantity: '1', unit: '36.40' },
]
