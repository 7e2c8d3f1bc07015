import { createHash } from 'node:crypto'
import { chmodSync, cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { writePhotograph } from '../../db/file/photograph-files.ts'
import { parseDayFile, playDay } from '../../electron/day/day-file.ts'
import { limited, longestBody } from '../../electron/server/hosts/limits.ts'
import { picture } from '../pictures/pictures.ts'
import { estimateLines, freshHandler, openTestShop, type Shop, takeInPell } from './handler-fixture.ts'

let shop: Shop
beforeEach(async () => {
  shop = await openTestShop()
})
afterEach(() => shop.close())

const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const fileOf = (hash: string, ending: string, of = shop) =>
  join(of.folder, 'shop.photographs', hash.slice(0, 2), `${hash}.${ending}`)

const put = (bytes: Uint8Array, type = 'image/jpeg') =>
  shop.ask('/api/photographs', {
    method: 'PUT',
    headers: { 'Content-Type': type, 'Countwheel-Person': String(shop.clock.person) },
    body: new Uint8Array(bytes),
  })
const keepJpeg = async (): Promise<string> => (await put(picture('quadrants.jpg'))).body.hash
const acts = async (): Promise<string[]> =>
  (await shop.view('dayBook')).rows.map((row: { act: string }) => row.act)
const get = (hash: string) => shop.handle(new Request(`http://ledger/photographs/${hash}`))

describe('keeping a photograph', () => {
  it.each([
    ['quadrants.jpg', 'image/jpeg', 'jpg'],
    ['quadrants.png', 'image/png', 'png'],
  ] as const)(
    'puts %s beside the ledger under its hash and serves the same bytes for good',
    async (name, type, ending) => {
      const bytes = picture(name)
      const { status, body } = await put(bytes, type)
      expect([status, body]).toEqual([200, { hash: sha(bytes) }])
      expect(readFileSync(fileOf(body.hash, ending)).equals(bytes)).toBe(true)
      const answer = await get(body.hash)
      expect(Buffer.from(await answer.arrayBuffer()).equals(bytes)).toBe(true)
      expect(answer.headers.get('Content-Type')).toBe(type)
      expect(answer.headers.get('X-Content-Type-Options')).toBe('nosniff')
      expect(answer.headers.get('Cache-Control')).toContain('immutable')
    },
  )

  it('goes by the bytes, not by what they are said to be', async () => {
    const { hash } = (await put(picture('quadrants.png'), 'image/jpeg')).body
    expect((await get(hash)).headers.get('Content-Type')).toBe('image/png')
  })

  it('has its row in the day book with hash, kind and length', async () => {
    await keepJpeg()
    const [row] = (await shop.view('dayBook')).rows
    expect(row).toMatchObject({ act: 'photographs.keep', subjectKind: 'photograph', person: 'Ines Marrow' })
  })

  it('twice changes nothing: one file, one row, the same answer', async () => {
    expect(await keepJpeg()).toBe(await keepJpeg())
    expect(await acts()).toEqual(['photographs.keep', 'shop.open'])
    expect(readdirSync(join(shop.folder, 'shop.photographs'))).toHaveLength(1)
  })

  it('is not put on record by its hash alone: the bytes must stand beside the ledger as said', async () => {
    const host = await openTestShop('2027-03-01T09:20:00.000Z', { played: false })
    const file = { hash: sha(picture('quadrants.jpg')), mediaType: 'image/jpeg' as const }
    const bytes = picture('quadrants.jpg').length
    const keep = async (length: number) =>
      (await host.tryAct('photographs.keep', { ...file, bytes: length })).body
    expect((await keep(bytes)).problems[0].code).toBe('photograph.missing')
    writePhotograph(host.file, file, picture('quadrants.jpg'))
    expect((await keep(bytes + 1)).problems[0].code).toBe('photograph.missing')
    expect((await keep(bytes)).hash).toBe(file.hash)
    host.close()
  })

  it('puts a file back that was missing, and says what to do while it is', async () => {
    const hash = await keepJpeg()
    rmSync(fileOf(hash, 'jpg'))
    const missing = await get(hash)
    expect(missing.status).toBe(404)
    expect((await missing.json()).problems[0].code).toBe('photographFile.unknown')
    await keepJpeg()
    expect((await get(hash)).status).toBe(200)
  })

  it('leaves no half of a file where a name was in the way', async () => {
    const { hash } = { hash: sha(picture('quadrants.jpg')) }
    writeFileSync(join(shop.folder, 'shop.photographs'), 'a file in the way')
    const { status, body } = await put(picture('quadrants.jpg'))
    expect([status, body.problems[0].code]).toEqual([422, 'photograph.noAccess'])
    expect(await acts()).toEqual(['shop.open'])
    expect((await get(hash)).status).toBe(404)
  })
})

describe('what is not kept', () => {
  const refused = async (bytes: Uint8Array, code: string) => {
    const { status, body } = await put(bytes)
    expect([status, body.problems[0].code]).toEqual([422, code])
    expect(body.problems[0].message).not.toBe(code)
    expect(existsSync(join(shop.folder, 'shop.photographs'))).toBe(false)
    expect(await acts()).toEqual(['shop.open'])
  }

  it('is a text called a JPEG', () => refused(Buffer.from('not a picture at all'), 'photograph.notAnImage'))
  it('is a WebP picture, which no paper could show', () =>
    refused(picture('lossy.webp'), 'photograph.notPrintable'))
  it('is nothing', () => refused(Buffer.alloc(0), 'photograph.notAnImage'))
  it('is a photograph that breaks off', () =>
    refused(picture('quadrants.jpg').subarray(0, 300), 'photograph.damaged'))

  it('is more than a body may have', async () => {
    const bytes = new Uint8Array(longestBody.photograph + 1)
    bytes.set(picture('quadrants.jpg'))
    const request = new Request('http://ledger/api/photographs', {
      method: 'PUT',
      headers: { 'Content-Type': 'image/jpeg', 'Content-Length': String(bytes.length) },
      body: bytes,
    })
    expect((await limited(shop.handle)(request)).status).toBe(413)
    expect(existsSync(join(shop.folder, 'shop.photographs'))).toBe(false)
  })

  it('is asked for by no other name than a hash', async () => {
    for (const name of ['..%2F..%2Fetc%2Fpasswd', 'a'.repeat(63), 'G'.repeat(64), 'shop.countwheel'])
      expect((await get(name)).status).toBe(422)
    expect((await get('a'.repeat(64))).status).toBe(404)
  })
})

describe('a photograph beside a repair', () => {
  it('is taken in with the clock: of the whole of it, and of one condition note with its pins', async () => {
    const hash = await keepJpeg()
    const other = (await put(picture('quadrants.png'))).body.hash
    await takeInPell(shop, {
      photographs: [hash],
      condition: [
        {
          component: 'case',
          grade: 'damaged',
          pins: [{ view: 'front', x: 0.25, y: 0.75 }],
          photographs: [other, hash],
        },
      ],
    })
    const { photographs, condition } = await shop.view('repairs/2201')
    expect(condition[0].pins).toMatchObject([{ view: 'front', x: 0.25, y: 0.75 }])
    const [note] = condition
    expect(photographs.map((p: { hash: string; noteId: number }) => [p.hash, p.noteId])).toEqual([
      [other, note.id],
      [hash, note.id],
      [hash, null],
    ])
    expect(photographs[0]).toMatchObject({ moment: 'intake', struckReason: null })
  })

  it('must be kept first: a taking in that names another is refused whole', async () => {
    const condition = [{ component: 'case', grade: 'damaged', photographs: ['b'.repeat(64)] }]
    await expect(takeInPell(shop, { condition })).rejects.toThrow('condition[0].photographs[0]')
    expect(await acts()).toEqual(['shop.open'])
  })

  it('is put there once, on a note of that repair, and struck out with a reason', async () => {
    const hash = await keepJpeg()
    const { id } = await takeInPell(shop)
    const input = { hash, repairId: id, noteId: 1, moment: 'bench', remark: 'After cleaning' }
    const use = await shop.act('photographs.attach', input)
    const code = async (act: string, given: unknown) => (await shop.tryAct(act, given)).body.problems[0].code
    expect(await code('photographs.attach', input)).toBe('photograph.attached')
    expect(await code('photographs.attach', { ...input, noteId: 99 })).toBe('note.unknown')
    expect(await code('photographs.attach', { ...input, hash: 'c'.repeat(64) })).toBe('photograph.unknown')
    await shop.act('photographs.strike', { useId: use.id, reason: 'Another clock' })
    expect(await code('photographs.strike', { useId: use.id, reason: 'Again' })).toBe('entry.struck')
    const { photographs } = await shop.view('repairs/2201')
    expect(photographs).toMatchObject([{ remark: 'After cleaning', struckReason: 'Another clock' }])
    await shop.act('photographs.attach', input)
  })
})

describe('photographs outlive the computer', () => {
  it('in a backup: those that are missing in its folder are copied, the others left alone', async () => {
    const hash = await keepJpeg()
    const backUp = () =>
      shop.ask('/api/backup', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{}' })
    await backUp()
    const copy = join(shop.folder, 'backups/shop.photographs', hash.slice(0, 2), `${hash}.jpg`)
    expect(readFileSync(copy).equals(picture('quadrants.jpg'))).toBe(true)
    chmodSync(copy, 0o400)
    await put(picture('quadrants.png'))
    expect((await backUp()).status).toBe(200)
    const kept = readdirSync(join(shop.folder, 'backups/shop.photographs'))
    expect(kept.filter(name => name !== 'ledger.identity')).toHaveLength(2)
  })

  it('in a day file: played, it records them, and the folder copied beside the new ledger shows them again', async () => {
    const hash = await keepJpeg()
    await takeInPell(shop, { photographs: [hash] })
    const target = freshHandler()
    const setNow = (at: string) => {
      target.clock.at = at
    }
    await playDay({ handle: target.handle, setNow }, parseDayFile(JSON.stringify(await shop.view('dayFile'))))
    const { photographs } = await target.view('repairs/2201')
    expect(photographs).toMatchObject([{ hash }])
    expect((await target.handle(new Request(`http://ledger/photographs/${hash}`))).status).toBe(404)
    cpSync(join(shop.folder, 'shop.photographs'), join(target.folder, 'shop.photographs'), {
      recursive: true,
    })
    expect((await target.handle(new Request(`http://ledger/photographs/${hash}`))).status).toBe(200)
    target.close()
  })
})

/** The owner hears the estimate, declines, and takes the clock home. */
async function takenBackUnrepaired({ act, view }: Shop, repairId: number): Promise<void> {
  const estimate = await act('estimates.write', { repairId, lines: estimateLines })
  await act('estimates.send', { estimateId: estimate.id, way: 'e-mail' })
  const word = { estimateId: estimate.id, answer: 'declined', who: 'R. Pell', way: 'e-mail' }
  await act('estimates.recordWord', word)
  const { belongings } = await view('repairs/2201')
  const back = belongings
    .filter(({ custody }: { custody: string }) => custody === 'received')
    .map(({ id }: { id: number }) => ({ id, returned: true }))
  await act('counter.handOver', { repairId, toName: 'Rosamund Pell', belongings: back })
}

describe('the condition beside the clock’s last visit', () => {
  it('says of each note whether it is new, noted otherwise or as it was', async () => {
    const first = await takeInPell(shop)
    expect((await shop.view('repairs/2201')).lastCondition).toBe(null)
    await takenBackUnrepaired(shop, first.id)
    await takeInPell(shop, {
      owner: { id: first.ownerId },
      clock: { id: first.clockId },
      condition: [
        { component: 'dial', finish: 'silver-coloured', grade: 'marked', remark: 'scratch at four.' },
        { component: 'glass', grade: 'broken' },
      ],
    })
    const { condition, lastCondition } = await shop.view('repairs/2202')
    expect(condition.map((note: { since: string }) => note.since)).toEqual(['same', 'new'])
    expect(lastCondition).toMatchObject({ number: 2201, condition: [{ component: 'dial' }] })
  })
})
