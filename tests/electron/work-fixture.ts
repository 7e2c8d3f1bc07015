import { estimateLines, type Shop, takeInPell } from './handler-fixture.ts'

/** A repair whose owner has given the go-ahead. */
export async function agreedRepair(shop: Shop, more: Record<string, unknown> = {}) {
  const repair = await takeInPell(shop, more)
  const estimate = await shop.act('estimates.write', { repairId: repair.id, lines: estimateLines })
  await shop.act('estimates.send', { estimateId: estimate.id, way: 'in-person' })
  await shop.act('estimates.recordWord', {
    estimateId: estimate.id,
    answer: 'go-ahead',
    who: 'Rosamund Pell',
    way: 'telephone',
  })
  return repair as { id: number; number: number; ownerId: number; clockId: number }
}

/** Another owner with another clock, so that a second repair can stand in the shop. */
export const another = {
  owner: { name: 'Tobias Okafor-Lind' },
  clock: { form: 'mantel', trains: 2, power: 'spring', duration: '8-day', strike: 'rack' },
}

/** A repair that has been worked on for a stretch of typed labour. */
export async function workedRepair(shop: Shop, more: Record<string, unknown> = {}) {
  const repair = await agreedRepair(shop, more)
  const on = shop.clock.at.slice(0, 10)
  await shop.act('bench.enterLabour', { repairId: repair.id, task: 'clean', minutes: 5, on })
  return repair
}

/** Hands a repair's clock over to its owner with everything that came with it, paid later. */
export async function handOver(shop: Shop, repair: { id: number; number: number }) {
  const { belongings, owner } = await shop.view(`repairs/${repair.number}`)
  await shop.act('counter.handOver', {
    repairId: repair.id,
    toName: owner.name,
    belongings: belongings
      .filter((b: { custody: string }) => b.custody === 'received')
      .map((b: { id: number }) => ({ id: b.id, returned: true })),
    unpaidReason: 'Pays by transfer on Friday',
  })
}

/** The codes and fields of a refusal. */
export const refused = ({
  status,
  body,
}: {
  status: number
  body: { problems?: { code: string; field: string }[] }
}) => ({
  status,
  problems: (body.problems ?? []).map(({ code, field }) => `${code} ${field}`.trim()),
})
