import { answer, api } from '../api.ts'

/** What the bench has in hand, as several pages ask for it. */
export const benchQuery = { queryKey: ['bench'], queryFn: () => answer(api.pages.bench.$get()) }
