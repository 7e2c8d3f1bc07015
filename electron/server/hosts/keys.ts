import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

/** 192 bits, twice over what the standards ask of a key, as 32 characters that an address can carry. */
const secret = () => randomBytes(24).toString('base64url')

/** Equal or not in the same time, whatever the lengths. */
function same(given: string, expected: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(given), digest(expected))
}

/** Who may come in during one run of the host. */
export interface Keys {
  /** The run's key: good for one browser, and as a bearer for scripts as long as the host runs. */
  readonly runKey: string
  /** A further key, good for one browser. */
  invite(): string
  /** Trades a key that no browser has used yet for a browser's token; nothing for any other key. */
  exchange(key: string): string | undefined
  /** True for a token that `exchange` gave out in this run. */
  isBrowser(token: string): boolean
  /** True for the run's key, used or not. */
  isRunKey(key: string): boolean
}

/** Fresh keys for one run: nothing is kept between runs. */
export function createKeys(): Keys {
  const runKey = secret()
  const unused = [runKey]
  const browsers: string[] = []
  return {
    runKey,
    invite: () => {
      const key = secret()
      unused.push(key)
      return key
    },
    exchange: key => {
      const place = unused.findIndex(one => same(key, one))
      if (place < 0) return undefined
      unused.splice(place, 1)
      const token = secret()
      browsers.push(token)
      return token
    },
    isBrowser: token => browsers.some(one => same(token, one)),
    isRunKey: key => same(key, runKey),
  }
}
