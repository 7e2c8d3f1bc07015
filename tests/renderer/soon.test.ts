import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { soon } from '../../renderer/parts/soon.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** Writes that last until they are ended. */
function slowWrites() {
  const ends: (() => void)[] = []
  return { ends, write: vi.fn(() => new Promise<void>(end => ends.push(end))) }
}

test('who types without a pause is written down all the same', async () => {
  const write = vi.fn(async () => {})
  const { changed } = soon(write, 250)
  for (let key = 0; key < 100; key++) {
    changed()
    await vi.advanceTimersByTimeAsync(50)
  }
  expect(write.mock.calls.length).toBeGreaterThanOrEqual(10)
})

test('one write is on its way at a time, and what changed meanwhile follows it', async () => {
  const { ends, write } = slowWrites()
  const { changed } = soon(write, 250)
  changed()
  await vi.advanceTimersByTimeAsync(250)
  changed()
  await vi.advanceTimersByTimeAsync(1000)
  expect(write).toHaveBeenCalledTimes(1)
  ends[0]?.()
  await vi.advanceTimersByTimeAsync(250)
  expect(write).toHaveBeenCalledTimes(2)
})

test('closed, it waits for the write on its way and begins none; reopened, it goes on', async () => {
  const { ends, write } = slowWrites()
  const { changed, close, reopen } = soon(write, 250)
  changed()
  await vi.advanceTimersByTimeAsync(250)
  changed()
  let closed = false
  const closing = close().then(() => {
    closed = true
  })
  await vi.advanceTimersByTimeAsync(1000)
  expect(closed).toBe(false)
  ends[0]?.()
  await closing
  await vi.advanceTimersByTimeAsync(1000)
  expect(write).toHaveBeenCalledTimes(1)
  reopen()
  await vi.advanceTimersByTimeAsync(250)
  expect(write).toHaveBeenCalledTimes(2)
})

test('a page that goes away writes at once what is not written, and nothing where all is', () => {
  const write = vi.fn(async () => {})
  const { changed, flush } = soon(write, 250)
  flush()
  expect(write).not.toHaveBeenCalled()
  changed()
  flush()
  expect(write).toHaveBeenCalledTimes(1)
})
