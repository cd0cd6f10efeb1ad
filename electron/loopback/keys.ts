/** Who may come in: one-time tokens, each swapped once for a key that the browser keeps as a cookie. */

/** Keeps the tokens and keys of one run; both are forgotten when the desk stops. */
export interface Keys {
  /** A token that opens the desk once. It travels in an address, which other programs can read. */
  readonly newToken: () => string
  /** Swaps a token for a key; `undefined` if it was never given out or has been used. */
  readonly redeem: (token: string) => string | undefined
  readonly isKey: (key: string) => boolean
}

/** Tokens not yet used, at most; the oldest ones lapse. */
const mostTokens = 16

export function createKeys(randomBytes: (n: number) => Uint8Array): Keys {
  const secret = () => Buffer.from(randomBytes(32)).toString('base64url')
  const tokens = new Set<string>()
  const keys = new Set<string>()
  return {
    newToken() {
      const token = secret()
      tokens.add(token)
      for (const oldest of tokens) if (tokens.size > mostTokens) tokens.delete(oldest)
      return token
    },
    redeem(token) {
      if (!tokens.delete(token)) return undefined
      const key = secret()
      keys.add(key)
      return key
    },
    isKey: (key) => keys.has(key),
  }
}

/** The cookie's name holds the port, since browsers share cookies among all ports of a host. */
function cookieName(port: number): string {
  return `duskline-${port}`
}

/** The header that hands a key to the browser, out of reach of the page and of other sites. */
export function keyToCookie(key: string, port: number): string {
  return `${cookieName(port)}=${key}; Path=/; HttpOnly; SameSite=Strict`
}

/** The key in a Cookie header, if there is one for this port. */
export function cookieToKey(header: string | undefined, port: number): string | undefined {
  const start = `${cookieName(port)}=`
  const pair = header?.split(';').find((part) => part.trim().startsWith(start))
  return pair?.trim().slice(start.length)
}
