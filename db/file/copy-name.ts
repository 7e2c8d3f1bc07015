import { dirname, join, parse } from 'node:path'

// Colons may not stand in a file's name everywhere.
const namedAt = (at: string) => at.replaceAll(':', '')
const stamp = /(\d{4}-\d{2}-\d{2}T\d{2})(\d{2})(\d{2}\.\d{3}Z)$/

/** The name of a ledger's copy: its own name and the instant, `shop 2027-03-01T092000.000Z.countwheel`. */
export function copyName(ledger: string, at: string): string {
  const { name, ext } = parse(ledger)
  return `${name} ${namedAt(at)}${ext}`
}

/** The instant in the name of a ledger's copy, or nothing where the file is no copy of a ledger of that name. */
export function instantIn(file: string, ledger: string): string | undefined {
  const { name, ext } = parse(ledger)
  const [stamped, hour, minute, second] = stamp.exec(parse(file).name) ?? []
  return hour && file === `${name} ${stamped}${ext}` ? `${hour}:${minute}:${second}` : undefined
}

/** The ledger file beside which a copy's photographs and papers stand: for `shop 2027-….countwheel` it is `shop.countwheel` there; for any other file it is the file. */
export function namesake(file: string): string {
  const { name, ext } = parse(file)
  const own = name.replace(stamp, '')
  return own !== name && own.endsWith(' ') ? join(dirname(file), `${own.slice(0, -1)}${ext}`) : file
}
