import type { Calculation } from './calculation.ts'

/** Every calculation by name. Each is loaded only when it is asked for, so that the command starts fast. */
export const calculations: Readonly<Record<string, () => Promise<{ default: Calculation }>>> = {
  price: () => import('./price.ts'),
  allocate: () => import('./allocate.ts'),
  warranty: () => import('./warranty.ts'),
  worktime: () => import('./worktime.ts'),
  'line-fit': () => import('./line-fit.ts'),
  rate: () => import('./rate.ts'),
  pendulum: () => import('./pendulum.ts'),
  train: () => import('./train.ts'),
  mainspring: () => import('./mainspring.ts'),
  strike: () => import('./strike.ts'),
  verdict: () => import('./verdict.ts'),
  'run-in': () => import('./run-in.ts'),
}
