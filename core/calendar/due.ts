import type { CivilDate } from './civil.ts'

/** Whether the day something was due on has passed. */
export const isOverdue = (dueOn: CivilDate | null, today: CivilDate): boolean =>
  dueOn !== null && dueOn < today

/** Whether something is due today, or overdue. */
export const isDue = (dueOn: CivilDate | null, today: CivilDate): boolean => dueOn !== null && dueOn <= today
