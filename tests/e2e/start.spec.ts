import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { start } from '../../core/words/en/start.ts'
import { places } from '../../electron/places.ts'
import { ask } from '../electron/ask.ts'

/** The start command as a person runs it, and what it has said so far. */
interface Started {
  readonly process: ChildProcess
  out: string
  err: string
  ended: Promise<number | null>
}

const running: Started[] = []

/** A screen without a display, and data folders of the test's own, unless the test says otherwise. */
const environment = (given: NodeJS.ProcessEnv) => ({
  ...process.env,
  DISPLAY: '',
  WAYLAND_DISPLAY: '',
  XDG_DATA_HOME: test.info().outputPath('data'),
  ...given,
})

function run(
  program: string,
  args: readonly string[],
  given: NodeJS.ProcessEnv = {},
  cwd = places.root,
): Started {
  const child = spawn(program, args, {
    cwd,
    env: environment(given),
    stdio: ['ignore', 'pipe', 'pipe'],
    detached: true,
  })
  const started: Started = {
    process: child,
    out: '',
    err: '',
    ended: once(child, 'close').then(([code]) => code),
  }
  child.stdout.on('data', piece => {
    started.out += piece
  })
  child.stderr.on('data', piece => {
    started.err += piece
  })
  running.push(started)
  return started
}

const startProgram = join(places.root, 'electron/commands/start.ts')
const runStart = (args: readonly string[], given: NodeJS.ProcessEnv = {}) =>
  run(process.execPath, [startProgram, ...args], given)

/** The address it has printed; waits for it. */
async function addressOf(started: Started): Promise<URL> {
  const find = () => /http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]+/.exec(started.out)?.[0]
  await expect.poll(find, { message: started.err, timeout: 60_000 }).toBeDefined()
  return new URL(find() ?? '')
}

const ledger = (name = 'shop.countwheel') => test.info().outputPath(name)

function expectClosed(file: string): void {
  expect(existsSync(`${file}-wal`)).toBe(false)
  expect(readFileSync(file).subarray(0, 15).toString()).toBe('SQLite format 3')
}

test.afterEach(async () => {
  for (const { process: child, ended } of running.splice(0)) {
    if (child.exitCode === null) child.kill('SIGTERM')
    await ended
  }
})

test('prints one line with the address, which answers 200 with its key, 401 without, 403 to a foreign Host or Origin', async () => {
  const started = runStart(['--no-open', '--port', '0', '--ledger', ledger()])
  const { port, searchParams } = await addressOf(started)
  const bearer = { Authorization: `Bearer ${searchParams.get('key')}` }
  const status = async (headers: Record<string, string>) => (await ask(Number(port), '/', { headers })).status
  expect(started.out.trimEnd().split('\n')).toHaveLength(1)
  expect(started.out).toContain(ledger())
  expect(await status(bearer)).toBe(200)
  expect(await status({})).toBe(401)
  expect(await status({ ...bearer, Host: 'elsewhere.test' })).toBe(403)
  expect(await status({ ...bearer, Origin: 'https://elsewhere.test' })).toBe(403)
})

test('keeps the usual ledger in the user’s data folder', async () => {
  const started = runStart(['--no-open', '--port', '0'])
  await addressOf(started)
  const file = test.info().outputPath('data', 'countwheel', 'shop.countwheel')
  expect(started.out).toContain(file)
  expect(existsSync(file)).toBe(true)
})

test('a second start on the same ledger is told where it is open, and the address it is given lets one browser in', async () => {
  const first = await addressOf(runStart(['--no-open', '--port', '0', '--ledger', ledger()]))
  const second = runStart(['--no-open', '--port', '0', '--ledger', ledger()])
  expect(await second.ended).toBe(1)
  expect(second.out).toBe('')
  const fresh = new URL(/http\S+/.exec(second.err)?.[0] ?? '')
  expect(second.err.trimEnd()).toBe(start.heldAtAddress({ file: ledger(), address: fresh.href }))
  expect(fresh.port).toBe(first.port)
  expect(fresh.searchParams.get('key')).not.toBe(first.searchParams.get('key'))
  expect((await ask(Number(fresh.port), `/${fresh.search}`)).status).toBe(303)
})

test('--demo opens the demonstration shop, fresh at each start and apart from the usual ledger', async () => {
  const file = test.info().outputPath('data', 'countwheel', 'demonstration.countwheel')
  const bookOf = async () => {
    const started = runStart(['--demo', '--no-open', '--port', '0'])
    const address = await addressOf(started)
    expect(started.out).toBe(`${start.demoAtAddress({ file, address: address.href })}\n`)
    const headers = { Authorization: `Bearer ${address.searchParams.get('key')}`, 'Countwheel-Person': '1' }
    const { status, body } = await ask(Number(address.port), '/api/pages/dayFile', { headers })
    expect(status).toBe(200)
    started.process.kill('SIGTERM')
    expect(await started.ended).toBe(0)
    expectClosed(file)
    // The same acts; each ledger draws its own salts.
    return (JSON.parse(body) as { salt: string }[]).map(({ salt: _, ...act }) => act)
  }
  const first = await bookOf()
  expect(first.length).toBeGreaterThan(50)
  expect(await bookOf()).toEqual(first)
  expect(existsSync(test.info().outputPath('data', 'countwheel', 'shop.countwheel'))).toBe(false)
})

test('tells every problem of its arguments at once and ends with 2', async () => {
  const started = runStart(['--prot', '--port', '70000', '--demo=yes'])
  expect(await started.ended).toBe(2)
  for (const given of ['--prot', '70000', '--demo']) expect(started.err).toContain(given)
  expect(started.out).toBe('')
})

test('--help lists the options and ends with 0', async () => {
  const started = runStart(['--help'])
  expect(await started.ended).toBe(0)
  expect(started.out).toContain('--no-open')
})

test('a taken port is told in a sentence, and the ledger is not left open', async () => {
  const { port } = await addressOf(runStart(['--no-open', '--port', '0', '--ledger', ledger()]))
  const second = runStart(['--no-open', '--port', port, '--ledger', ledger('other.countwheel')])
  expect(await second.ended).toBe(1)
  expect(second.err.trimEnd()).toBe(start.portTaken({ port: Number(port) }))
  expectClosed(ledger('other.countwheel'))
})

test('a file that is no ledger is refused in a sentence and left as it is', async () => {
  writeFileSync(ledger('letter.txt'), 'Dear owner, your clock is ready.')
  const started = runStart(['--no-open', '--ledger', ledger('letter.txt')])
  expect(await started.ended).toBe(1)
  expect(started.err).toBe(`${start.ledgerRefusals['ledger.foreign']({ file: ledger('letter.txt') })}\n`)
  expect(readFileSync(ledger('letter.txt'), 'utf8')).toBe('Dear owner, your clock is ready.')
})

test.describe('through npm', () => {
  /** From a folder elsewhere, so that a relative file is seen to start from where the person is. */
  const npmStart = () => {
    mkdirSync(test.info().outputPath('elsewhere'), { recursive: true })
    const args = [
      '--prefix',
      places.root,
      'start',
      '--',
      '--no-open',
      '--port',
      '0',
      '--ledger',
      'mine.countwheel',
    ]
    return run('npm', args, {}, test.info().outputPath('elsewhere'))
  }
  const file = () => test.info().outputPath('elsewhere', 'mine.countwheel')

  test('Ctrl-C closes the ledger’s file cleanly', async () => {
    const started = npmStart()
    await addressOf(started)
    expect(existsSync(`${file()}-wal`)).toBe(true)
    process.kill(-(started.process.pid ?? 0), 'SIGINT')
    await started.ended
    expectClosed(file())
  })

  test('SIGTERM to npm alone closes the ledger’s file cleanly and leaves no program behind', async () => {
    const started = npmStart()
    const { port } = await addressOf(started)
    started.process.kill('SIGTERM')
    await started.ended
    await expect.poll(() => existsSync(`${file()}-wal`)).toBe(false)
    expectClosed(file())
    await expect(ask(Number(port), '/')).rejects.toThrow('ECONNREFUSED')
  })
})

test.describe('where there is a display', () => {
  /** A folder with a program of this name. */
  function program(name: string, lines: string): string {
    const folder = test.info().outputPath(`with-${name}`)
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, name), `#!/bin/sh\n${lines}\n`)
    chmodSync(join(folder, name), 0o755)
    return folder
  }

  const standIn = join(places.root, 'tests/desktop/stand-in/run.ts')
  const notes = () => test.info().outputPath('notes')
  const display = (electron: string, more: NodeJS.ProcessEnv = {}) => ({
    DISPLAY: ':99',
    STAND_IN_NOTES: notes(),
    STAND_IN_USER_DATA: test.info().outputPath('user-data'),
    ELECTRON_OVERRIDE_DIST_PATH: program('electron', electron),
    ...more,
  })

  test('opens the desktop window, and a signal closes it and the ledger’s file', async () => {
    mkdirSync(test.info().outputPath('user-data'))
    const started = runStart(['--ledger', ledger()], display(`exec "${process.execPath}" "${standIn}" "$@"`))
    await expect.poll(() => started.out, { timeout: 15_000 }).toBe(`${start.inWindow({ file: ledger() })}\n`)
    started.process.kill('SIGTERM')
    expect(await started.ended).toBe(0)
    expectClosed(ledger())
    expect(started.err).toBe('')
  })

  test('a window that does not open is told, and the browser opens with a key that is not the printed one', async () => {
    const opened = test.info().outputPath('opened')
    const path = `${program('xdg-open', `echo "$1" > "${opened}"`)}:${process.env.PATH}`
    const started = runStart(['--ledger', ledger()], display('exit 127', { PATH: path }))
    const printed = await addressOf(started)
    expect(started.err.trimEnd()).toBe(start.windowFailed)
    await expect.poll(() => existsSync(opened) && readFileSync(opened, 'utf8')).toContain(printed.origin)
    const address = new URL(readFileSync(opened, 'utf8').trim())
    expect(address.searchParams.get('key')).not.toBe(printed.searchParams.get('key'))
    for (const { search } of [address, printed]) {
      expect((await ask(Number(printed.port), `/${search}`)).status).toBe(303)
    }
  })

  test('--no-open opens neither', async () => {
    const started = runStart(
      ['--no-open', '--port', '0', '--ledger', ledger()],
      display('touch "$STAND_IN_NOTES"'),
    )
    await addressOf(started)
    expect(existsSync(notes())).toBe(false)
  })
})
