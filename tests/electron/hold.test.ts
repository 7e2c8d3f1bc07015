import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { holdLedger, LedgerHeld, refuseHeld } from '../../electron/shop/hold.ts'
import { temporaryFolder } from './temporary.ts'

const program = new URL('../../electron/shop/hold.ts', import.meta.url).href

/** Another process that holds the ledger until it is killed. */
async function otherHolder(file: string) {
  const code = `const { holdLedger } = await import(${JSON.stringify(program)})
    await holdLedger(${JSON.stringify(file)}, () => 'its address')
    console.log('held')
    setInterval(() => {}, 1000)`
  const child = spawn(process.execPath, ['--input-type=module', '-e', code], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  await once(child.stdout, 'data')
  return child
}

test('one process holds a ledger; another one is told where it is open', async () => {
  const file = join(temporaryFolder(), 'a.countwheel')
  const hold = await holdLedger(file, () => 'http://127.0.0.1:1/?key=fresh')
  await expect(holdLedger(file, () => '')).rejects.toEqual(new LedgerHeld('http://127.0.0.1:1/?key=fresh'))
  await expect(refuseHeld(file)).rejects.toMatchObject({ address: 'http://127.0.0.1:1/?key=fresh' })
  hold.release()
  await refuseHeld(file)
})

test('other ledgers are not held', async () => {
  const folder = temporaryFolder()
  const holds = await Promise.all(['a', 'b'].map(name => holdLedger(join(folder, name), () => '')))
  for (const hold of holds) hold.release()
})

test('a ledger is the same one by whichever way its folder is reached', async () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'true'))
  symlinkSync(join(folder, 'true'), join(folder, 'other'))
  const hold = await holdLedger(join(folder, 'true/a'), () => '')
  await expect(refuseHeld(join(folder, 'other/a'))).rejects.toThrow(LedgerHeld)
  await expect(refuseHeld(join(folder, 'other/../true/a'))).rejects.toThrow(LedgerHeld)
  hold.release()
})

test('the hold of a killed process is nobody’s', async () => {
  const file = join(temporaryFolder(), 'a')
  const child = await otherHolder(file)
  await expect(refuseHeld(file)).rejects.toMatchObject({ address: 'its address' })
  child.kill('SIGKILL')
  await once(child, 'exit')
  const hold = await holdLedger(file, () => '')
  hold.release()
})
