/** Bench tasks labour is entered against; the first set a bench works through on a full service. Common practice. */
export const tasks = [
  'assess',
  'let-down',
  'strip',
  'clean',
  'bush',
  'polish',
  'springs',
  'assemble',
  'oil',
  'beat',
  'strike-chime',
  'case',
  'dial',
  'set-up',
  'test',
  'other',
] as const
export type Task = (typeof tasks)[number]

/** What is written down of a movement as it was found, before it is stripped, to be found again at the assembly. Common practice. */
export const asFoundMarks = [
  'chime-barrel',
  'gathering-pallet',
  'hammers',
  'count-wheel',
  'motion-work',
  'springs',
  'other',
] as const
export type AsFoundMark = (typeof asFoundMarks)[number]

/** Kinds of work a price book and a warranty speak of. */
export const scopes = ['overhaul', 'service', 'repair', 'set-up', 'none'] as const
export type Scope = (typeof scopes)[number]

/** Work that the price book gives hours for. Common practice. */
export const works = [
  'overhaul',
  'service',
  'repair',
  'set-up',
  'case-repair',
  'dial-repair',
  'dial-cleaning',
  're-silvering',
] as const
export type Work = (typeof works)[number]

/** What a line of an estimate or an invoice can be told to be, so that rules go by codes and never by a description. */
export const lineWorks = [...works, 'call-out', 'estimate-fee'] as const
export type LineWork = (typeof lineWorks)[number]

/** Why a repair stands still. */
export const waitReasons = ['parts', 'outside-work', 'owner', 'other'] as const
export type WaitReason = (typeof waitReasons)[number]

/** How an owner's word reached the shop. */
export const ways = ['in-person', 'telephone', 'e-mail', 'message', 'letter'] as const
export type Way = (typeof ways)[number]

/** What a message to an owner is about. */
export const messageAbouts = [
  'ready',
  'estimate',
  'finding',
  'reminder',
  'delay',
  'uncollected',
  'other',
] as const
export type MessageAbout = (typeof messageAbouts)[number]

/** How money came in or went out. */
export const moneyMethods = ['cash', 'card', 'transfer', 'cheque'] as const
/** As money, or from (or to) what the shop holds on the owner's account. */
export const paymentMethods = [...moneyMethods, 'account'] as const
export type PaymentMethod = (typeof paymentMethods)[number]

/** Why an open rest is given up. */
export const writeOffCauses = ['bad-debt', 'courtesy'] as const
export type WriteOffCause = (typeof writeOffCauses)[number]
/** What is taken off what is owed without money. */
export type WriteOffKind = WriteOffCause | 'rounding'

/** Kinds of part the stores keep; sizes differ by kind. */
export const partKinds = [
  'mainspring',
  'suspension',
  'line',
  'bushing',
  'glass',
  'hands',
  'pivot-steel',
  'consumable',
  'other',
] as const
export type PartKind = (typeof partKinds)[number]

/** How the ends of a mainspring are made (trade reference §3, common practice). */
export const springEnds = ['hole', 'loop', 'other'] as const
export type SpringEnd = (typeof springEnds)[number]

/** Where a clock stands to be tested. */
export const placeKinds = ['shelf', 'hook', 'floor', 'stand'] as const
export type PlaceKind = (typeof placeKinds)[number]

/** What a warranty does not cover unless agreed otherwise. Common practice (trade reference, warranty). */
export const exclusions = [
  'mainsprings',
  'lines-chains',
  'suspension',
  'hands',
  'glass',
  'accident',
  'misuse',
  'tampering',
  'set-up',
  'run-down',
  'timekeeping',
  'not-transferable',
] as const
export type Exclusion = (typeof exclusions)[number]

/** Set-up advice printed for the owner, by form of clock (see setUpAdviceFor). */
export const setUpAdvice = [
  'level',
  'beat',
  'wind',
  'hands-forward',
  'lift-dome',
  'weights-off',
  'fix-to-wall',
  'strike-out-of-step',
  'regulate',
  'service-again',
  'pendulum-off',
  'torsion-lock',
  'torsion-settle',
  'torsion-regulate',
  'cuckoo',
  'wind-weights',
  'platform-regulate',
  'chime-corrects',
  'chime-set',
  'mains',
  'mercury-pendulum',
  'weights-off-wall',
  'hands-forward-silent',
  'wind-year',
] as const
export type SetUpAdvice = (typeof setUpAdvice)[number]
