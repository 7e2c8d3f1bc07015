import { z } from 'zod'
import { isMoment } from '../../../core/calendar/moment.ts'
import { id, optional, saying } from './fields.ts'

/** A local time with or without seconds, or an instant. */
export const moment = z.string().max(40).refine(isMoment, saying('input.notATime'))

/** A moment that may be left open. */
export const openMoment = moment.nullable().default(null)

/** A vendor by number or by name; neither means none. */
export const vendor = { vendorId: id.nullable().default(null), vendor: optional(120) }
