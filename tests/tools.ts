import { aptInstall, onPath } from './install.ts'

/** The programs that read papers and books back in the tests, and the Debian package that brings each. */
const packages = {
  pdftotext: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  zbarimg: 'zbar-tools',
  hledger: 'hledger',
} as const

/** A program that the tests read papers and books with. */
export type Tool = keyof typeof packages

/** Makes sure that the tools are there, installing what is missing as root; throws with what to install by hand. */
export function needTools(...tools: readonly Tool[]): void {
  const missing = () => [...new Set(tools.filter(tool => !onPath(tool)).map(tool => packages[tool]))]
  if (missing().length === 0) return
  aptInstall(missing())
  const still = missing()
  if (still.length > 0) throw new Error(`The tests need these packages of the system: ${still.join(', ')}.`)
}

if (import.meta.main) needTools(...(Object.keys(packages) as Tool[]))
