import { useQuery } from '@tanstack/react-query'
import type { Code } from './code.ts'

/** Shows a part of the program once its code is there. Not through `lazy`: React holds back what a Suspense uncovers for 300 ms. */
export function Fetched({ of }: { of: Code }) {
  const { data: Part, error } = useQuery(of)
  if (error) throw error
  return Part && <Part />
}
