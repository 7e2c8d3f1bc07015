import type { UseQueryOptions } from '@tanstack/react-query'
import type { ComponentType } from 'react'

/** Code that is fetched once, when it is first wanted. */
export type Code = UseQueryOptions<ComponentType>

/** A part of the program by a name of its own; `load` imports its file, whose default export it is. */
export const code = (name: string, load: () => Promise<{ default: ComponentType }>): Code => ({
  queryKey: ['code', name],
  queryFn: async () => (await load()).default,
  staleTime: Number.POSITIVE_INFINITY,
  gcTime: Number.POSITIVE_INFINITY,
})
