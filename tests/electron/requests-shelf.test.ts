import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openTestShop, type Shop } from './handler-fixture.ts'
import { another, refused, workedRepair } from './work-fixture.ts'

let shop: Shop
let placeId: number
beforeEach(async () => {
  shop = await openTestShop()
  placeId = (await shop.act('shop.addPlace', { name: 'Shelf A1', kind: 'shelf' })).id
})
afterEach(() => shop.close())

const start = async (more = {}) => {
  const repair = await workedRepair(shop)
  const run = await shop.act('shelf.startRunIn', { repairId: repair.id, placeId, ...more })
  return { repair, runId: run.id as number, run }
}

/** Goes round: `errors` one day apart at 09:20, on from the day the clock stands at. */
async function rounds(runId: number, errors: readonly string[], more: Record<string, unknown> = {}) {
  for (const error of errors) {
    shop.clock.at = new Date(Date.parse(shop.clock.at) + 86_400_000).toISOString()
    await shop.act('shelf.read', { runId, error, ...more })
  }
}

const run = async (id: number) => (await shop.view(`runs/${id}`)).run

describe('putting a clock on the shelf', () => {
  it('makes the plan of the shop’s policy: stages, winds and readings, and the first entry of the log', async () => {
    const { runId, run: started } = await start()
    // Two weekly winds from Monday 1 March: ready two weeks on; read each day, on closed days at the next opening.
    expect(started).toMatchObject({ readyOn: '2027-03-15', winds: 2 })
    const { stages, dues, log, place, limitPerDay } = await run(runId)
    expect(place).toBe('Shelf A1')
    expect(limitPerDay).toBe('34')
    expect(stages.map((s: { name: string }) => s.name)).toEqual(['out of the case', 'in the case'])
    expect(dues.filter((d: { kind: string }) => d.kind === 'wind')[0].doneAt).toBe('2027-03-01T09:20:00.000Z')
    expect(log).toMatchObject([{ errorMs: null, leftMs: 0, wound: true }])
    expect((await shop.view('repairs/2201')).standing.stage).toBe('running-in')
  })

  it('leaves room for labour remembered afterwards, but starts no labour clock', async () => {
    const { repair } = await start()
    const of = { repairId: repair.id, task: 'oil' }
    expect(await shop.act('bench.enterLabour', { ...of, minutes: 20, on: '2027-03-01' })).toMatchObject({
      minutes: 20,
    })
    expect((await shop.view('repairs/2201')).standing.stage).toBe('running-in')
    expect(refused(await shop.tryAct('bench.startLabour', of)).problems).toEqual(['standing.runningIn'])
  })

  it('is refused at a place that is taken, before any work, in the future and before the clock came', async () => {
    const { repair } = await start()
    const other = await workedRepair(shop, another)
    const taken = await shop.tryAct('shelf.startRunIn', { repairId: other.id, placeId })
    expect(refused(taken).problems).toEqual(['place.taken placeId'])
    expect(taken.body.problems[0].message).toBe('Repair 2201 stands at Shelf A1. Choose another place.')
    const second = (await shop.act('shop.addPlace', { name: 'Hook 1', kind: 'hook' })).id
    const at = (start: string) =>
      shop.tryAct('shelf.startRunIn', { repairId: other.id, placeId: second, start })
    expect(refused(await at('2027-03-01T09:21')).problems).toEqual(['runIn.inFuture start'])
    expect(refused(await at('2027-02-28T09:00')).problems).toEqual(['runIn.beforeTakenIn start'])
    const twice = await shop.tryAct('shelf.startRunIn', { repairId: repair.id, placeId: second })
    expect(refused(twice).problems).toEqual(['standing.runningIn'])
    const limit = { repairId: other.id, placeId: second, limitPerDay: '0' }
    expect(refused(await shop.tryAct('shelf.startRunIn', limit)).problems).toEqual([
      'runIn.limitPerDay limitPerDay',
    ])
  })

  it('moves to a free place only', async () => {
    const { runId } = await start()
    const hook = (await shop.act('shop.addPlace', { name: 'Hook 1', kind: 'hook' })).id
    await shop.act('shelf.move', { runId, placeId: hook })
    expect((await shop.view('shelf')).places).toMatchObject([
      { name: 'Shelf A1', number: null },
      { name: 'Hook 1', number: 2201 },
    ])
    expect(refused(await shop.tryAct('shelf.move', { runId, placeId: hook })).problems).toEqual([
      'place.taken placeId',
    ])
  })

  it('is noted in the log when it moves, and what was to be read is still to be', async () => {
    const { runId } = await start()
    const hook = (await shop.act('shop.addPlace', { name: 'Hook 1', kind: 'hook' })).id
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    await shop.act('shelf.move', { runId, placeId: hook })
    expect((await run(runId)).log[1]).toMatchObject({ event: 'moved', errorMs: null })
    expect((await shop.view('shelf')).rows[0].due).toMatchObject({ reading: true })
  })
})

describe('what fits at a place', () => {
  it('is on record beside it, and is advice: a clock may be put there all the same', async () => {
    const { id: placeId } = await shop.act('shop.addPlace', { name: 'Low shelf', kind: 'shelf' })
    const room = { heightMm: 400, widthMm: 350, depthMm: null, bearsG: 12_000, weightsHang: false }
    await shop.act('shelf.describePlace', { placeId, ...room })
    expect((await shop.view('shelf')).places.find((p: { id: number }) => p.id === placeId)).toMatchObject(
      room,
    )
    const repair = await workedRepair(shop, {
      clock: { form: 'longcase', trains: 2, power: 'weight', duration: '8-day', strike: 'rack' },
    })
    const size = { heightMm: 2100, widthMm: 520, depthMm: 260, weightG: 61_000 }
    await shop.act('register.measureClock', { clockId: repair.clockId, ...size })
    expect((await shop.view('shelf')).toStart[0].clock).toMatchObject(size)
    await shop.act('shelf.startRunIn', { repairId: repair.id, placeId })
    const small = await shop.tryAct('shelf.describePlace', { placeId, heightMm: 0 })
    expect(refused(small).problems).toEqual(['input.tooSmall heightMm'])
    const unknown = await shop.tryAct('shelf.describePlace', { placeId: 999 })
    expect(refused(unknown).problems).toEqual(['place.unknown placeId'])
  })
})

describe('the round', () => {
  it('lists what is due by today in walking order with the last readings beside', async () => {
    const { runId } = await start()
    expect((await shop.view('shelf')).rows[0].due).toEqual({
      wind: false,
      reading: false,
      overdue: false,
      nextOn: '2027-03-02',
    })
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    expect((await shop.view('shelf')).counts).toMatchObject({ running: 1, due: 1, toWind: 0 })
    await shop.act('shelf.read', { runId, error: '+0:02' })
    const { rows, counts } = await shop.view('shelf')
    expect(counts.due).toBe(0)
    expect(rows[0].last).toMatchObject([{ errorMs: 2000 }, { errorMs: 0 }])
    shop.clock.at = '2027-03-08T09:20:00.000Z'
    expect((await shop.view('shelf')).rows[0].due).toMatchObject({ wind: true, reading: true, overdue: true })
    await shop.act('shelf.read', { runId, error: '-0:02', wound: true })
    expect((await shop.view('shelf')).rows[0].due).toMatchObject({ wind: false, reading: false })
  })

  it.each([
    [{}, 'reading.nothing error'],
    [{ error: 'fast' }, 'reading.notAnError error'],
    [{ error: '1', at: '2027-03-02T09:21' }, 'reading.inFuture at'],
    [{ error: '1', at: '2027-02-28T09:21' }, 'reading.beforeStart at'],
    [{ error: '1', at: '2027-03-01T09:20' }, 'reading.sameTime at'],
    [{ hour: { shown: 13, counted: 1 } }, 'input.tooLarge hour.shown'],
    [{ hour: { shown: 1, counted: 101 } }, 'input.tooLarge hour.counted'],
    [{ half: -1 }, 'input.tooSmall half'],
    [{ quarter: { which: 5, right: true } }, 'input.notOneOf quarter.which'],
    [{ error: '+16:39' }, 'reading.unlikely error'],
    [{ error: '1', nutTurns: '1000' }, 'reading.nutTurns nutTurns'],
    [{ error: '1', temperatureC: 99 }, 'input.tooLarge temperatureC'],
  ])('refuses %o: %s', async (entry, problem) => {
    const { runId } = await start()
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    expect(refused(await shop.tryAct('shelf.read', { runId, ...entry })).problems).toEqual([problem])
    expect((await run(runId)).log).toHaveLength(1)
  })

  it('a reading written down late, as from paper, is put in at its own time', async () => {
    const { runId } = await start()
    shop.clock.at = '2027-03-03T09:20:00.000Z'
    await shop.act('shelf.read', { runId, error: '6', at: '2027-03-03T09:00' })
    await shop.act('shelf.read', { runId, error: '4', at: '2027-03-02T17:00:30' })
    expect((await shop.view('shelf')).rows[0].last.map((e: { errorMs: number }) => e.errorMs)).toEqual([
      6000, 4000, 0,
    ])
    const twice = await shop.tryAct('shelf.read', { runId, error: '5', at: '2027-03-02T17:00:30' })
    expect(refused(twice).problems).toEqual(['reading.sameTime at'])
  })

  it('a figure far from what the readings foretell is asked about, and taken when it was looked at again', async () => {
    const { runId } = await start()
    await rounds(runId, ['30', '60', '90'])
    shop.clock.at = '2027-03-05T09:20:00.000Z'
    const unlikely = await shop.tryAct('shelf.read', { runId, error: '+16:39' })
    expect(unlikely.body.problems[0].message).toContain('about 120 s off')
    await shop.act('shelf.read', { runId, error: '+16:39', sure: true })
    expect((await run(runId)).log).toHaveLength(5)
  })

  it('hands set tell how they were found and how they were left', async () => {
    const { runId } = await start()
    await rounds(runId, ['30', '60', '90'])
    await rounds(runId, ['120'], { left: '0' })
    await rounds(runId, ['30', '60'])
    const { log, figures } = await run(runId)
    expect(log[4]).toMatchObject({ errorMs: 120_000, leftMs: 0 })
    expect(figures.ratePerDay).toBeCloseTo(30, 9)
  })

  it('past the end of its plan a clock is read and wound on, until something is decided', async () => {
    const { runId } = await start()
    shop.clock.at = '2027-03-30T09:20:00.000Z'
    await shop.act('shelf.read', { runId, error: '5', wound: true, sure: true })
    expect((await shop.view('shelf')).rows[0].due).toMatchObject({
      reading: false,
      wind: false,
      nextOn: '2027-03-31',
    })
    shop.clock.at = '2027-03-31T09:20:00.000Z'
    expect((await shop.view('shelf')).rows[0]).toMatchObject({
      due: { reading: true, wind: false },
      verdict: 'not-yet',
    })
    shop.clock.at = '2027-04-06T09:20:00.000Z'
    expect((await shop.view('shelf')).rows[0].due).toMatchObject({ reading: true, wind: true, overdue: true })
  })

  it('a computer clock put back enters nothing before the last reading', async () => {
    const { runId } = await start()
    await rounds(runId, ['1'])
    shop.clock.at = '2027-02-01T09:00:00.000Z'
    expect(refused(await shop.tryAct('shelf.read', { runId, error: '1' })).problems).toEqual([
      'reading.beforeStart at',
    ])
    expect(refused(await shop.tryAct('shelf.toBench', { runId, reason: 'x' })).problems).toEqual([
      'clock.behind',
    ])
  })

  it('a dial time is taken against the computer’s clock, less the error last found in that', async () => {
    const { runId } = await start()
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    expect((await shop.act('shelf.read', { runId, error: '=9:20:07' })).errorMs).toBe(7000)
    const check = await shop.act('shelf.compareClock', { error: '=9:19:58', reference: 'Radio time signal' })
    expect(check.errorMs).toBe(2000)
    shop.clock.at = '2027-03-03T09:20:00.000Z'
    expect((await shop.act('shelf.read', { runId, error: '=9:20:07' })).errorMs).toBe(9000)
    expect((await shop.view('shelf')).clockCheck).toMatchObject({ reference: 'Radio time signal' })
  })
})

describe('corrections', () => {
  it('are new entries that count in place of the old one, which stays legible', async () => {
    const { runId } = await start()
    await rounds(runId, ['2', '40', '6'])
    const wrong = (await run(runId)).log[2]
    await shop.act('shelf.correct', { readingId: wrong.id, error: '4' })
    const { log, figures } = await run(runId)
    expect(
      log.map((e: { errorMs: number; leftMs: number | null; stands: boolean }) => [
        e.leftMs ?? e.errorMs,
        e.stands,
      ]),
    ).toEqual([
      [0, true],
      [2000, true],
      [40000, false],
      [6000, true],
      [4000, true],
    ])
    expect(figures.ratePerDay).toBeCloseTo(2, 9)
    const again = await shop.tryAct('shelf.correct', { readingId: wrong.id, error: '4' })
    expect(refused(again).problems).toEqual(['reading.corrected readingId'])
  })

  it('a reading of the wrong clock is struck out, and what it had ticked off is due again', async () => {
    const { runId } = await start()
    await rounds(runId, ['2'])
    const { id } = (await run(runId)).log[1]
    await shop.act('shelf.strikeReading', { readingId: id, reason: 'That was repair 2202' })
    expect((await shop.view('shelf')).rows[0]).toMatchObject({
      due: { reading: true },
      last: [{ errorMs: 0 }],
    })
    expect(
      refused(await shop.tryAct('shelf.strikeReading', { readingId: id, reason: 'x' })).problems,
    ).toEqual(['reading.corrected readingId'])
  })
})

describe('the decision', () => {
  const pass = (runId: number, verdict: string, reason = '') => ({ runId, reason, seen: { verdict } })

  it('a run that has shown everything passes, its figures frozen, and the clock is ready', async () => {
    const { runId, repair } = await start()
    const sounds = { twelveRight: true, fourRight: true, selfCorrected: true }
    await rounds(runId, ['2'], sounds)
    await rounds(runId, ['4', '6', '8', '10', '12'])
    await rounds(runId, ['14'], { wound: true, event: 'cased', inBeat: true })
    await rounds(runId, ['16', '18', '20', '22', '24', '26'])
    await rounds(runId, ['28'], { wound: true })
    expect((await shop.view('shelf')).rows[0].verdict).toBe('may-pass')
    const stale = await shop.tryAct('shelf.pass', pass(runId, 'not-yet', 'It goes well'))
    expect(refused(stale).problems).toEqual(['record.changedMeanwhile verdict'])
    expect(await shop.act('shelf.pass', pass(runId, 'may-pass'))).toMatchObject({ verdict: 'may-pass' })
    const view = await shop.view('repairs/2201')
    expect(view.standing.stage).toBe('ready')
    expect(view.repair.readyAt).toBe(shop.clock.at)
    expect(view.runs).toMatchObject([{ outcome: 'passed', readyOn: '2027-03-15' }])
    expect(view.runs[0].figures.ratePerDay).toBeCloseTo(2, 9)
    const late = await shop.tryAct('shelf.read', { runId, error: '1' })
    expect(refused(late).problems).toEqual(['runIn.ended runId'])
    expect(refused(await shop.tryAct('shelf.startRunIn', { repairId: repair.id, placeId })).problems).toEqual(
      ['standing.alreadyReady'],
    )
  })

  it('against the verdict a run passes with a reason only', async () => {
    const { runId } = await start()
    await rounds(runId, ['2'])
    expect(refused(await shop.tryAct('shelf.pass', pass(runId, 'not-yet'))).problems).toEqual([
      'runIn.reasonNeeded reason',
    ])
    const passed = await shop.act('shelf.pass', pass(runId, 'not-yet', 'Owner leaves the country'))
    expect(passed.verdict).toBe('not-yet')
    expect((await shop.view('repairs/2201')).repair.readyReason).toBe('Owner leaves the country')
  })

  it('a stop starts the test again, and a restart keeps the old run with its figures', async () => {
    const { runId } = await start()
    await rounds(runId, ['2', '4'])
    await rounds(runId, ['0'], { stopped: true })
    expect((await shop.view('shelf')).rows[0]).toMatchObject({ verdict: 'begin-again' })
    const again = await shop.act('shelf.restart', { runId, reason: 'Stopped: fly rubbed' })
    const { runs, standing } = await shop.view('repairs/2201')
    expect(standing.stage).toBe('running-in')
    expect(runs).toMatchObject([
      { id: runId, outcome: 'restarted', reason: 'Stopped: fly rubbed' },
      { id: again.id, outcome: null, place: 'Shelf A1', startedAt: '2027-03-04T09:20:00.000Z' },
    ])
    expect(runs[0].figures.faults).toMatchObject([{ kind: 'stopped' }])
    expect((await shop.view(`runs/${again.id}`)).before).toEqual([
      {
        id: runId,
        outcome: 'restarted',
        reason: 'Stopped: fly rubbed',
        startedOn: '2027-03-01',
        endedOn: '2027-03-04',
      },
    ])
    expect((await shop.view(`runs/${runId}`)).run.log).toHaveLength(4)
  })

  it('a stop whose error was not told is not lost', async () => {
    const { runId } = await start()
    await rounds(runId, ['2', '4'])
    shop.clock.at = '2027-03-04T09:20:00.000Z'
    await shop.act('shelf.read', { runId, stopped: true })
    expect((await shop.view('shelf')).rows[0].verdict).toBe('begin-again')
    await rounds(runId, ['3', '4', '5'])
    const { figures } = await run(runId)
    expect(figures.since).toBe('2027-03-04T09:20:00.000Z')
    expect(figures.ratePerDay).toBeCloseTo(1, 9)
  })

  it('goes back to the bench, and the place is free', async () => {
    const { runId, repair } = await start()
    await shop.act('shelf.toBench', { runId, reason: 'Strike slow' })
    expect((await shop.view('repairs/2201')).standing.stage).toBe('on-the-bench')
    expect((await shop.view('shelf')).places[0].number).toBeNull()
    shop.clock.at = '2027-03-02T09:20:00.000Z'
    await shop.act('shelf.startRunIn', { repairId: repair.id, placeId })
    expect((await shop.view('repairs/2201')).runs).toHaveLength(2)
  })

  it('counts hours and quarters of a chiming clock apart', async () => {
    const { runId } = await start()
    const quarter = { which: 4, right: true }
    await rounds(runId, ['2'], { hour: { shown: 10, counted: 10 }, quarter })
    expect((await run(runId)).figures).toMatchObject({
      wrongs: [],
      sheet: { hours: { 10: { right: true } } },
    })
    await rounds(runId, ['4'], { hour: { shown: 10, counted: 9 }, quarter })
    expect((await run(runId)).figures.wrongs).toMatchObject([{ kind: 'miscounted', expected: 10, heard: 9 }])
  })
})

it('the day book of a run-in can be played again, act by act', async () => {
  const { runId } = await start()
  await rounds(runId, ['+0:02', '=9:20:05'])
  await shop.act('shelf.pass', { runId, reason: 'Enough for the test', seen: { verdict: 'not-yet' } })
  const acts: { at: string; who: number; act: string; salt: string; with: unknown }[] =
    await shop.view('dayFile')
  const again = await openTestShop('2027-03-01T09:20:00.000Z')
  try {
    for (const { at, who, act, salt, with: input } of acts.slice(1)) {
      again.setSalt(salt)
      again.clock.at = at
      again.clock.person = who
      await again.act(act, input)
    }
    expect(await again.view('repairs/2201')).toEqual(await shop.view('repairs/2201'))
    expect((await again.view('dayFile')).slice(1)).toEqual(acts.slice(1))
  } finally {
    again.close()
  }
})
