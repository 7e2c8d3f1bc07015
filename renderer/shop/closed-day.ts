import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { useAct } from '../parts/act.tsx'

/** A day the shop is shut. */
export interface ClosedDay {
  readonly onDate: string
  readonly name: string
}

/** The days entered as closed. */
export function useClosedDays(): readonly ClosedDay[] {
  const { data } = useQuery({ queryKey: ['shop'], queryFn: () => answer(api.pages.shop.$get()) })
  return data?.open ? data.holidays : []
}

/** Closes the shop on some days. */
export function useCloseOn(said: (days: readonly ClosedDay[]) => string, after?: () => void) {
  return useAct(
    (days: readonly ClosedDay[]) => answer(api.shop.closeOn.$post({ json: { days: [...days] } })),
    { said: (_, days) => said(days), ...(after && { after }) },
  )
}
