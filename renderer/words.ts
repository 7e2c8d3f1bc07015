import { createContext, useContext } from 'react'
import { en, type Words } from '../core/words/en/index.ts'

/** The catalogue in use; another language is another value of this context. */
export const WordsContext = createContext<Words>(en)

/** Every word a page shows. */
export const useWords = (): Words => useContext(WordsContext)
