import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { start } from '../../core/words/en/start.ts'
import { startChoice } from '../../electron/commands/start/arguments.ts'

const choice = (...args: string[]) => {
  const checked = startChoice(args, '/shop')
  return checked.ok ? checked.value : checked.problems.map(({ code, field }) => `${code} ${field}`)
}

describe('the arguments of the start command', () => {
  test('none are needed', () => {
    expect(choice()).toEqual({ open: true, demo: false, help: false })
  })

  test('each says one thing, with or without an equals sign', () => {
    const all = { open: false, demo: true, help: true, port: 4900, ledger: '/shop/books.countwheel' }
    expect(choice('--no-open', '--demo', '--help', '--port', '4900', '--ledger', 'books.countwheel')).toEqual(
      all,
    )
    expect(choice('--no-open', '--demo', '--help', '--port=4900', '--ledger=books.countwheel')).toEqual(all)
  })

  test.each(['0', '1', '65535'])('port %s is taken', port => {
    expect(choice('--port', port)).toMatchObject({ port: Number(port) })
  })

  test.each(['65536', '-1', '1.5', '0x10', 'http', ' 1', '999999'])('port “%s” is not', port => {
    expect(choice(`--port=${port}`)).toEqual([`port-range ${port}`])
  })

  test('all problems are told at once', () => {
    expect(choice('--prot', '1', '--port', '70000', '--demo=yes', '--demo', 'here', '--ledger')).toEqual([
      'option-unknown --prot',
      'word-unknown 1',
      'value-unwanted --demo',
      'option-repeated --demo',
      'word-unknown here',
      'value-missing --ledger',
      'port-range 70000',
    ])
  })

  test('an option is never taken for another one’s value', () => {
    expect(choice('--ledger', '--demo')).toEqual(['value-missing --ledger'])
    expect(choice('--port=', '--no-open')).toEqual(['value-missing --port'])
  })

  test('the demonstration never plays over a file that is there', () => {
    const here = fileURLToPath(import.meta.url)
    expect(choice('--demo', '--ledger', here)).toEqual([`demo-over-ledger ${here}`])
  })

  test('each problem is a sentence that repeats what was given', () => {
    for (const sentence of Object.values(start.arguments))
      expect(sentence({ given: '--given' })).toContain('--given')
  })
})
