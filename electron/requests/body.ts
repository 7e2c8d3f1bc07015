import { zValidator } from '@hono/zod-validator'
import type { z } from 'zod'
import { refuseInput } from '../problems.ts'

/** The checked JSON body of an act; everything wrong with it at once. */
export const body = <T extends z.ZodType>(schema: T) => zValidator('json', schema, refuseInput)

/** The checked query of a view. */
export const query = <T extends z.ZodType>(schema: T) => zValidator('query', schema, refuseInput)
