import type { InferResponseType } from 'hono/client'
import type { api } from './api.ts'

/** The open shop as the ledger describes it to every page. */
export type ShopView = Extract<InferResponseType<typeof api.pages.shop.$get>, { open: true }>
