import { createContext, useContext } from 'react'

/** Goes on at once where it is known who acts, else when it has been said. */
export type Named = (goOn: () => void) => void

/** Who may have to be asked before an act is sent; where there is nobody to ask, it goes on. */
export const NamedContext = createContext<Named>(goOn => goOn())

/** Makes sure that an act carries a name. */
export const useNamed = () => useContext(NamedContext)
