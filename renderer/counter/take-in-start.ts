import { clockQuery } from '../register/clock.ts'
import { ownerQuery } from '../register/owner.ts'
import { repairQuery } from '../repair/repair.ts'
import type { TakeInStart } from './take-in-entry.ts'

/** What comes back: the owner, the clock and the earlier repair are known. */
async function fromRepair(number: string): Promise<TakeInStart> {
  const { repair, owner, clock, warranty } = await repairQuery(number).queryFn()
  return {
    name: owner.name,
    known: { id: owner.id, name: owner.name },
    knownClock: { id: clock.id, form: clock.form },
    comebackOf: repair.id,
    covered: warranty.cover?.covered ?? false,
  }
}

async function fromClock(id: string): Promise<TakeInStart> {
  const { clock, owners } = await clockQuery(Number(id)).queryFn()
  const now = owners.find(({ untilAt }) => untilAt === null)
  if (!now) return { name: '' }
  return {
    name: now.name,
    known: { id: now.ownerId, name: now.name },
    knownClock: { id: clock.id, form: clock.form },
  }
}

async function fromOwner(id: string): Promise<TakeInStart> {
  const { owner } = await ownerQuery(Number(id)).queryFn()
  return { name: owner.name, known: { id: owner.id, name: owner.name }, asksClock: true }
}

/** What a taking in begins with by its address: `comeback=` a repair's number, `clock=` or `of=` a clock or an owner on record, `owner=` a name. */
export async function startFrom(asked: URLSearchParams): Promise<TakeInStart> {
  const [comeback, clock, of] = ['comeback', 'clock', 'of'].map(key => asked.get(key))
  if (comeback) return fromRepair(comeback)
  if (clock) return fromClock(clock)
  if (of) return fromOwner(of)
  return { name: asked.get('owner') ?? '' }
}
