/** What is looked at when a clock comes in, in the order of the condition report. */
export const components = [
  'dial',
  'hands',
  'glass',
  'bezel',
  'hinge',
  'case',
  'feet',
  'movement',
  'hammers',
  'pendulum',
  'weights',
  'rods-gongs',
  'suspension',
] as const
export type Component = (typeof components)[number]

/** Surfaces, described by colour and look, not by assumed alloy. */
export const finishes = [
  'polished',
  'lacquered',
  'gilt',
  'silver-coloured',
  'painted',
  'bare-wood',
  'french-polished',
  'varnished',
  'veneered',
  'plain',
] as const
export type Finish = (typeof finishes)[number]

/** How good a component is, from sound to missing. */
export const grades = ['sound', 'worn', 'marked', 'damaged', 'broken', 'missing'] as const
export type Grade = (typeof grades)[number]

/** Signs of earlier repair worth having on record. Common practice. */
export const earlierRepairs = [
  'solder',
  'screwed-bushings',
  'punch-marks',
  'glue',
  'sheet-metal-screws',
  'over-oiled',
  'lever-scratches',
  'replaced',
  'refinished',
] as const
export type EarlierRepair = (typeof earlierRepairs)[number]

/** The outline drawings a condition report is pinned on. */
export const views = ['front', 'back', 'dial', 'movement'] as const
export type View = (typeof views)[number]

/** When a photograph was taken. */
export const photographMoments = ['intake', 'as-found', 'bench', 'hand-over'] as const
export type PhotographMoment = (typeof photographMoments)[number]

/** Springs as they came in. */
export const springStates = ['wound', 'partly', 'down', 'broken', 'none', 'unknown'] as const
export type SpringState = (typeof springStates)[number]

/** Separable things that come with a clock; `places` where several of one kind must be told apart. */
export const belongings = {
  pendulum: { places: [] },
  bob: { places: [] },
  weight: { places: ['left', 'centre', 'right'] },
  key: { places: [] },
  crank: { places: [] },
  'case-key': { places: [] },
  dome: { places: [] },
  base: { places: [] },
  hands: { places: [] },
  finial: { places: ['left', 'centre', 'right'] },
  hood: { places: [] },
  'travelling-case': { places: [] },
  papers: { places: [] },
  other: { places: [] },
} as const
export type Belonging = keyof typeof belongings
export const positions = ['left', 'centre', 'right'] as const
export type Position = (typeof positions)[number]

/** Whether a belonging is with the shop, stayed with the owner, or was never there. */
export const custodies = ['received', 'kept', 'absent'] as const
export type Custody = (typeof custodies)[number]
