import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { verified } from '../../db/verify/index.ts'
import { DayFileStopped, parseDayFile, playDay } from '../../electron/day/day-file.ts'
import { migrations } from '../db/temporary-ledger.ts'
import { freshHandler, openTestShop, rosamund, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
  await shop.act('register.addOwner', { ...rosamund, notes: 'Speaks of nothing but cats' })
  await takeInPell(shop)
})
afterEach(() => shop.close())

const commitmentOf = (id: number) =>
  shop.ledger.read.get<{ commitment: string }>(`SELECT commitment FROM day_book WHERE id = ${id}`).commitment
const redact = (id: number, commitment = commitmentOf(id)) =>
  shop.tryAct('dayBook.redact', { rows: [{ id, commitment }], reason: 'Asked for by the owner' })
const dayBook = () => {
  const { file, ledger } = shop
  const found = [...verified({ read: ledger.read, file, migrations })].find(({ name }) => name === 'dayBook')
  return { faults: found?.faults.map(({ code }) => code), notes: found?.notes }
}
const codes = (body: { problems: { code: string }[] }) => body.problems.map(({ code }) => code)

describe('a text taken out of the day book', () => {
  it('is gone from its row; the chain holds, and the verifying says which, when, by whom and why', async () => {
    expect((await redact(2)).status).toBe(200)
    expect(dayBook()).toEqual({
      faults: [],
      notes: [
        {
          code: 'dayBook.redacted',
          note: true,
          values: { id: 2, at: shop.clock.at, by: 'Ines Marrow', reason: 'Asked for by the owner' },
        },
      ],
    })
    const { rows } = await shop.view('dayBook')
    const row = rows.find((one: { id: number }) => one.id === 2)
    expect(row).toMatchObject({
      input: null,
      redaction: { by: 'Ines Marrow', reason: 'Asked for by the owner' },
    })
  })

  it('is only taken out of the row that was seen, once, and never out of a redaction', async () => {
    expect(codes((await redact(2, 'a'.repeat(64))).body)).toEqual(['dayBook.otherRow'])
    expect(codes((await redact(99, 'a'.repeat(64))).body)).toEqual(['dayBook.unknown'])
    await redact(2)
    expect(codes((await redact(2)).body)).toEqual(['dayBook.redactedAlready'])
    expect(codes((await redact(4)).body)).toEqual(['dayBook.aRedaction'])
  })

  it('without an act that says so is a fault, and so is a row whose commitment was changed with it', async () => {
    const harmed = (sql: string) => {
      const copy = join(shop.folder, 'copy.countwheel')
      shop.ledger.backUp(copy)
      const db = new Database(copy)
      for (const { name } of db
        .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'trigger'")
        .all())
        db.exec(`DROP TRIGGER ${name}`)
      db.exec(sql)
      db.close()
      return copy
    }
    const faultsIn = async (file: string) => {
      const { openUntouched } = await import('../../db/file/untouched.ts')
      const { random } = await import('../chance.ts')
      const looked = openUntouched(file, { migrations, now: () => shop.clock.at, random })
      const found = [...verified({ read: looked.read, file, migrations })].find(
        ({ name }) => name === 'dayBook',
      )
      looked.close()
      return found?.faults.map(({ code, values }) => `${code} ${values.id}`)
    }
    expect(await faultsIn(harmed('UPDATE day_book SET input = NULL, salt = NULL WHERE id = 2'))).toEqual([
      'dayBook.emptied 2',
    ])
    await redact(2)
    expect(
      await faultsIn(harmed(`UPDATE day_book SET commitment = '${'b'.repeat(64)}' WHERE id = 2`)),
    ).toEqual(['dayBook.changed 2', 'dayBook.emptied 2'])
  })

  it('is the only thing of a row that can be: everything else is forbidden by the file itself', () => {
    const db = new Database(':memory:')
    shop.ledger.backUp(join(shop.folder, 'copy.countwheel'))
    db.close()
    const copy = new Database(join(shop.folder, 'copy.countwheel'))
    const change = (set: string) => () => copy.exec(`UPDATE day_book SET ${set} WHERE id = 2`)
    for (const column of ['at', 'act', 'subject_kind', 'commitment', 'previous_hash', 'hash'])
      expect(change(`${column} = ${column} || 'x', input = NULL, salt = NULL`), column).toThrow(
        'never changed',
      )
    expect(change("input = '{}'")).toThrow('never changed')
    expect(change('input = NULL')).toThrow()
    expect(change('input = NULL, salt = NULL')).not.toThrow()
    copy.close()
  })

  it('is left out of the exported day book, which says so and is played no further than to it', async () => {
    await redact(2)
    const { body } = await shop.ask('/api/pages/dayFile')
    expect(body[1]).toMatchObject({ act: 'register.addOwner', redacted: true })
    expect(JSON.stringify(body)).not.toContain('cats')
    const target = freshHandler()
    const stage = { handle: target.handle, setNow: () => undefined }
    const stopped = await playDay(stage, parseDayFile(JSON.stringify(body))).catch((error: unknown) => error)
    expect(stopped).toBeInstanceOf(DayFileStopped)
    expect((stopped as DayFileStopped).problems[0]?.message).toContain('has been taken out of its day book')
    target.close()
  })
})
