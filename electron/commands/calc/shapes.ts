import type { Opening } from '../../../core/calendar/work.ts'
import { list, number, record, text } from './shape.ts'

export const date = text('2026-01-01')
export const localTime = text('2026-01-01T09:00')
export const instant = text('2026-01-01T09:00:00.000Z')
const timeOfDay = text('09:00')
export const money = text('1')
export const rate = text('1')
export const currency = text('EUR')

export const week = list(record<Opening['week'][number]>({ day: number, from: timeOfDay, to: text('17:00') }))
export const holidays = list(date)
