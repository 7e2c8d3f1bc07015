import { openLedger } from '../../db/file/ledger.ts'
import { createHandler } from '../../electron/server/handler.ts'
import { random } from '../chance.ts'
import { migrations } from './temporary-ledger.ts'

// Takes in one clock after another on the ledger named on the command line and says each number once it is acknowledged, or why it was
// refused, and ends.
const [file = '', from = '0'] = process.argv.slice(2)
const now = () => new Date().toISOString()
const ledger = openLedger(file, { migrations, now, random })
const handle = createHandler({ ledger, now, pages: '.', played: true })

for (let n = Number(from); ; n++) {
  const response = await handle(
    new Request('http://ledger/api/counter/takeIn', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({
        owner: { name: `Owner ${n}` },
        clock: { form: 'mantel', trains: 2, power: 'spring', duration: '8-day' },
        fault: 'Stops.',
        belongings: [{ item: 'key', custody: 'received' }],
      }),
    }),
  )
  const answer = (await response.json()) as { number: number } | { problems: { code: string }[] }
  if ('problems' in answer) {
    process.stdout.write(`${response.status} ${answer.problems.map(({ code }) => code).join(' ')}\n`)
    break
  }
  process.stdout.write(`${answer.number}\n`)
}
ledger.close()
