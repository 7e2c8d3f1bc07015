import { describe, expect, it } from 'vitest'
import { mayNot, reserved, whoMay } from '../../../core/people/may.ts'
import { type Role, roles } from '../../../core/people/roles.ts'

const somebody = (...some: Role[]) => ({ active: true, roles: some })
const codeOf = (act: string, who: ReturnType<typeof somebody> | null, several = true) =>
  mayNot({ act, who, several })?.code

describe('what is not everybody’s', () => {
  it.each(Object.entries(reserved))('%s is done by those it is given to, and by no others', (act, some) => {
    for (const role of roles)
      expect([role, codeOf(act, somebody(role))]).toEqual([
        role,
        some.includes(role) ? undefined : 'act.reserved',
      ])
    expect(codeOf(act, null)).toBe('act.nameNeeded')
    expect(codeOf(act, null, false)).toBeUndefined()
  })

  it('is given to an owner, whatever it is', () => {
    for (const act of Object.keys(reserved)) expect(codeOf(act, somebody('owner'))).toBeUndefined()
  })

  it('may be done by whoever has one of the roles among others', () => {
    expect(codeOf('accounts.pay', somebody('bench', 'counter'))).toBeUndefined()
    expect(codeOf('accounts.credit', somebody('bench', 'counter'))).toBe('act.reserved')
  })
})

it('all else is everybody’s, also without a name', () => {
  for (const act of ['bench.find', 'toString', '']) {
    expect(whoMay(act)).toBeNull()
    expect(codeOf(act, null)).toBeUndefined()
    expect(codeOf(act, somebody('bench'))).toBeUndefined()
  }
})

it('nobody who no longer works here does anything', () => {
  for (const act of ['bench.find', 'accounts.pay'])
    expect(codeOf(act, { ...somebody('owner'), active: false })).toBe('person.notHere')
})
