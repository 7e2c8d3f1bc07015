import { useState } from 'react'
import { type CautionFacts, cautionsFor } from '../../core/cautions/cautions.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import { expectedBelongings } from '../../core/vocabulary/expected-belongings.ts'
import type {
  Belonging,
  Component,
  Custody,
  EarlierRepair,
  Finish,
  Grade,
  Position,
  SpringState,
} from '../../core/vocabulary/intake.ts'
import type { Exclusion, Scope } from '../../core/vocabulary/work.ts'
import type { Pin } from '../condition/pins.ts'
import { useKept } from '../parts/draft.tsx'
import { useEntry, useLines } from '../parts/entry.ts'
import { describedClock, unseenClock } from '../register/clock-fields.tsx'
import { noContacts, typedContacts } from '../register/typed-contacts.ts'
import { useShop } from '../shop.tsx'

/** An owner already on record, as chosen. */
export interface KnownOwner {
  readonly id: number
  readonly name: string
}

/** A condition note as typed; blank until a component is chosen. */
export interface NoteLine {
  readonly component: Component | ''
  readonly grade: Grade
  readonly finish: Finish | ''
  readonly earlierRepair: EarlierRepair | ''
  readonly remark: string
  readonly pins: readonly Pin[]
  /** Hashes of kept photographs that show it. */
  readonly photographs: readonly string[]
}

export const blankNote: NoteLine = {
  component: '',
  grade: 'sound',
  finish: '',
  earlierRepair: '',
  remark: '',
  pins: [],
  photographs: [],
}

/** A belonging beyond the expected ones. */
export interface OtherBelonging {
  readonly item: Belonging | ''
  readonly position: Position | ''
  readonly description: string
  readonly count: string
  readonly custody: Custody
}

const blankBelonging: OtherBelonging = {
  item: '',
  position: '',
  description: '',
  count: '1',
  custody: 'received',
}

const blankRest = {
  fault: '',
  scope: 'service' as Scope,
  covered: false,
  estimateOnly: false,
  springs: 'unknown' as SpringState,
  agreedWords: '',
  fee: '',
  low: '',
  high: '',
  estimatedOn: '',
  /** '' until typed: whoever leaves the clock is taken to be its owner. */
  signedInBy: '',
}

/** A clock the owner has on record, as chosen. */
export interface KnownClock {
  readonly id: number
  readonly form: Form
}

/** How a list of drafts tells one taking in from another: by its owner's name. */
export const takeInTitle = (body: Readonly<Record<string, unknown>>): string =>
  (body.owner as { name?: string } | undefined)?.name?.slice(0, 200) ?? ''

/** What a taking in begins with: a name as typed, or an owner, a clock and an earlier repair that are known already. */
export interface TakeInStart {
  readonly name: string
  readonly known?: KnownOwner
  /** The owner's clocks are asked after at once. */
  readonly asksClock?: boolean
  readonly knownClock?: KnownClock
  readonly comebackOf?: number
  readonly covered?: boolean
}

/** Everything typed while a clock is taken in; all of it part of the draft. */
export function useTakeIn(start: TakeInStart) {
  const { settings } = useShop()
  const owner = useEntry({ name: start.name, address: '', ...noContacts }, 'owner', 'owner')
  const [otherOwners, setOtherOwners] = useKept<readonly number[]>('otherOwners', [])
  const [justChosen, setJustChosen] = useState(start.asksClock ?? false)
  const [known, setKnown] = useKept<KnownOwner | null>('known', start.known ?? null)
  const [knownClock, setKnownClock] = useKept<KnownClock | null>('knownClock', start.knownClock ?? null)
  const clock = useEntry(unseenClock('mantel'), 'clock', 'clock')
  const [otherClocks, setOtherClocks] = useKept<readonly number[]>('otherClocks', [])
  const [comebackOf, setComebackOf] = useKept<number | null>('comebackOf', start.comebackOf ?? null)
  const [causes, setCauses] = useKept<readonly Exclusion[]>('causes', [])
  const usualFee = settings.prices.estimateFee === '0' ? '' : settings.prices.estimateFee
  // What the shop answers for is not charged: the fee goes and comes back with the cover, unless another one was typed.
  const feeOf = (covered: boolean) => (covered ? '' : usualFee)
  const rest = useEntry(
    { ...blankRest, fee: feeOf(start.covered === true), covered: start.covered ?? false },
    '',
    'rest',
  )
  const condition = useLines('condition', blankNote, note => note.component === '', [], 'condition')
  const [photographs, setPhotographs] = useKept<readonly string[]>('photographs', [])
  const [custodies, setCustodies] = useKept<Readonly<Record<string, Custody>>>('custodies', {})
  const others = useLines('others', blankBelonging, other => other.item === '', [], 'others')
  const comeBack = (repairId: number | null, covered = false, from: readonly Exclusion[] = []) => {
    setComebackOf(repairId)
    setCauses(from)
    const { fee, covered: before } = rest.value
    rest.set({ covered, ...(covered !== before && fee === feeOf(before) ? { fee: feeOf(covered) } : {}) })
  }
  const chooseOwner = (chosen: KnownOwner | null, theirs: KnownClock | null = null) => {
    setKnown(chosen)
    setJustChosen(chosen !== null && theirs === null)
    setKnownClock(theirs)
    comeBack(null)
    owner.set({ name: chosen?.name ?? '' })
  }
  return {
    owner,
    /** Owners on record who were said to be someone else than the one typed. */
    otherOwners,
    setOtherOwners,
    known,
    /** The owner was chosen on this very page, not found on it again: their clocks are asked after next. */
    justChosen,
    knownClock,
    clock,
    /** Clocks on record that were said to be others than the one described. */
    otherClocks,
    setOtherClocks,
    comebackOf,
    /** What the fault of a comeback comes from, among what its warranty leaves out. */
    causes,
    /** Says which repair it comes back from, whether it is covered, and what its fault comes from; null: from none. */
    comeBack,
    rest,
    condition,
    /** Hashes of kept photographs of the whole clock. */
    photographs,
    setPhotographs,
    custodies,
    others,
    setCustody: (key: string, custody: Custody) => setCustodies(before => ({ ...before, [key]: custody })),
    /** null: a clock the shop has not seen before. */
    chooseClock: (chosen: KnownClock | null) => {
      setKnownClock(chosen)
      comeBack(null)
    },
    /** null: an owner the shop does not know yet. With a clock of theirs, where that was told. */
    chooseOwner,
  }
}

export type TakeInEntry = ReturnType<typeof useTakeIn>

/** The cautions that follow from the new clock as typed so far. */
export const newClockCautions = ({ clock }: TakeInEntry) => cautionsFor(clock.value satisfies CautionFacts)

/** The form of the clock that is being taken in. */
export const formOf = ({ knownClock, clock }: TakeInEntry): Form => knownClock?.form ?? clock.value.form

/** The key of an expected belonging in `custodies`. */
export const belongingKey = ({ item, position }: { item: Belonging; position: Position | '' }) =>
  `${item} ${position}`

const emptyAsNull = (text: string): string | null => text.trim() || null

function ownerInput({ known, owner, otherOwners }: TakeInEntry) {
  const { name, address } = owner.value
  return known
    ? { id: known.id }
    : { name, address, contacts: typedContacts(owner.value), otherThan: [...otherOwners] }
}

function clockInput({ knownClock, clock, otherClocks }: TakeInEntry) {
  if (knownClock) return { id: knownClock.id }
  return { ...describedClock(clock.value), otherThan: [...otherClocks] }
}

/** The expected belongings that something was said of, then the others. */
function belongingsInput(entry: TakeInEntry) {
  const said = expectedBelongings(formOf(entry)).flatMap(expected => {
    const custody = entry.custodies[belongingKey(expected)]
    return custody ? [{ ...expected, description: '', count: 1, custody }] : []
  })
  const more = entry.others
    .written()
    .flatMap(({ item, count, ...other }) => (item === '' ? [] : [{ ...other, item, count: Number(count) }]))
  return [...said, ...more]
}

/** What is sent. */
export function takeInInput(entry: TakeInEntry, draft: string) {
  const { fee, low, high, estimatedOn, signedInBy, ...rest } = entry.rest.value
  return {
    owner: ownerInput(entry),
    clock: clockInput(entry),
    ...rest,
    draft,
    comebackOf: entry.comebackOf,
    causes: [...entry.causes],
    fee: emptyAsNull(fee),
    low: emptyAsNull(low),
    high: emptyAsNull(high),
    estimatedOn: emptyAsNull(estimatedOn),
    signedInBy: signedInBy || entry.owner.value.name,
    condition: entry.condition
      .written()
      .flatMap(({ component, ...note }) => (component === '' ? [] : [{ component, ...note }])),
    photographs: [...entry.photographs],
    belongings: belongingsInput(entry),
  }
}
