import { papers } from './papers.ts'
import { vocabulary as v } from './vocabulary.ts'
import { workingTitles } from './working-papers.ts'

/** The words of coded values, by the name of the field they stand in. */
export const coded: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  form: v.forms,
  power: v.powers,
  duration: v.durations,
  escapement: v.escapements,
  strike: v.strikes,
  chime: v.chimes,
  dial: v.dials,
  component: v.components,
  finish: v.finishes,
  grade: v.grades,
  earlierRepair: v.earlierRepairs,
  springs: v.springStates,
  item: v.belongings,
  position: v.positions,
  custody: v.custodies,
  task: v.tasks,
  mark: v.asFoundMarks,
  scope: v.scopes,
  work: v.lineWorks,
  reason: v.waitReasons,
  about: v.messageAbouts,
  way: v.ways,
  method: v.paymentMethods,
  cause: v.writeOffKinds,
  kind: { ...v.placeKinds, ...v.partKinds, ...workingTitles },
  size: papers.sizes,
  ends: v.springEnds,
  causes: v.exclusions,
  exclusions: v.exclusions,
}
