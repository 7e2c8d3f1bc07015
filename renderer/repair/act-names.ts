import { isInShop } from '../../core/standing/stages.ts'
import type { RepairAct } from '../../core/standing/standing.ts'
import type { Words } from '../../core/words/en/index.ts'
import type { Repair } from './repair.ts'

/** Acts that no standing waits for but that may be right at any time. */
export type SideAct =
  | 'pay'
  | 'refund'
  | 'write-off'
  | 'take-back-write-off'
  | 'estimated-date'
  | 'tell-owner'
  | 'decide-cover'
  | 'note'

/** Acts that are done on the page of the repair itself. */
export type FormAct = Exclude<RepairAct, 'work' | 'end-wait' | 'start-run-in' | 'decide-run-in'> | SideAct

/** Acts that are done on another page: where. */
const elsewhere: Partial<Record<RepairAct, string>> = {
  work: '/bench',
  'end-wait': '/bench',
  'start-run-in': '/shelf',
  'decide-run-in': '/shelf',
}

/** Where an act is done, seen from the page whose addresses begin with `base`. */
export const placeOfAct = (act: RepairAct | SideAct, base: string, number: number): string => {
  const page = elsewhere[act as RepairAct]
  return page ? `${page}/${number}` : `${base}/${number}/${act}`
}

/** What the act's button says. */
export function actWords({ screens, repair }: Words, act: RepairAct | SideAct): string {
  const side: Record<SideAct, string> = {
    pay: repair.payForm.act,
    refund: repair.refundForm.act,
    'write-off': repair.writeOffForm.act,
    'take-back-write-off': repair.takeBackForm.act,
    'estimated-date': repair.dateForm.act,
    'tell-owner': repair.tellForm.act,
    'decide-cover': repair.coverForm.act,
    note: repair.noteForm.act,
  }
  return act in side ? side[act as SideAct] : screens.acts[act as RepairAct]
}

/** What of a repair decides which acts are open. */
export interface ActsOf {
  readonly standing: Pick<Repair['standing'], 'stage' | 'next'>
  readonly money: {
    readonly balance: { readonly due: number; readonly writtenOff: number }
    readonly heldMinor: number
  }
  /** The repair it comes back from. */
  readonly comeback: object | null
  /** What was told over the counter that an estimate costs, and what of it is paid. */
  readonly quoted: { readonly fee?: number | undefined }
  readonly feePaidMinor: number
}

function sideActs({ standing: { stage }, money, comeback }: ActsOf): SideAct[] {
  const inShop = isInShop(stage)
  const acts: Record<SideAct, boolean> = {
    'tell-owner': inShop,
    pay: inShop || money.balance.due > 0,
    refund: money.heldMinor > 0,
    'write-off': money.balance.due > 0,
    'take-back-write-off': money.balance.writtenOff > 0,
    'estimated-date': inShop,
    'decide-cover': inShop && comeback !== null,
    note: inShop,
  }
  return (Object.keys(acts) as SideAct[]).filter(act => acts[act])
}

/** What comes before the clock goes: a fee told for an estimate that was declined is billed, and what is owed is taken. */
function beforeHandOver({
  standing: { stage, next },
  money,
  quoted,
  feePaidMinor,
}: ActsOf): (RepairAct | SideAct)[] {
  const feeOpen = stage === 'declined' && (quoted.fee ?? 0) > 0 && feePaidMinor === 0
  if (feeOpen && next.includes('invoice')) return ['invoice']
  return money.balance.due > 0 ? ['pay'] : []
}

/** The acts open on a repair, the plain next one first: what is owed is taken before the clock goes. */
export function openActs(view: ActsOf): (RepairAct | SideAct)[] {
  const [lead, ...others] = view.standing.next
  const side = sideActs(view)
  const before = lead === 'hand-over' ? beforeHandOver(view) : []
  const ordered = lead ? [...before, lead] : []
  return [...new Set([...ordered, ...others, ...side])]
}
