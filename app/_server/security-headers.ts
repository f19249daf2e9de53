/** Headers that every answer carries, page or not. */
export const commonHeaders: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'geolocation=(self), camera=(), microphone=(), payment=(), usb=()',
  'Cross-Origin-Resource-Policy': 'same-origin',
}

/** For answers that are data: nothing in them may ever run or be framed. */
export const dataPolicy = "default-src 'none'; frame-ancestors 'none'"

/**
 * Content security policy of the pages: everything from this server and nothing from elsewhere.
 *
 * @param nonce       fresh for each answer; the framework puts it on the scripts and styles it writes into the page
 * @param tileOrigins origins of map pictures, where an online background was configured
 */
export function pagePolicy(nonce: string, tileOrigins: readonly string[] = [], isDevelopment = false): string {
  const rules: Record<string, readonly string[]> = {
    'default-src': ["'self'"],
    'script-src': ["'self'", `'nonce-${nonce}'`, ...(isDevelopment ? ["'unsafe-eval'"] : [])],
    'style-src': ["'self'", `'nonce-${nonce}'`],
    // A style attribute sets looks on its own element and cannot load or run anything from elsewhere.
    'style-src-attr': ["'unsafe-inline'"],
    'img-src': ["'self'", 'data:', 'blob:', ...tileOrigins],
    'font-src': ["'self'"],
    'connect-src': ["'self'", ...tileOrigins],
    'worker-src': ["'self'"],
    'manifest-src': ["'self'"],
    'object-src': ["'none'"],
    'base-uri': ["'none'"],
    'form-action': ["'self'"],
    'frame-ancestors': ["'none'"],
  }
  return Object.entries(rules).map(([name, values]) => `${name} ${values.join(' ')}`).join('; ')
}

/** Origins in MILLRACE_TILES, a comma-separated list of addresses; what is not an http address is passed over. */
export function tileOrigins(text = process.env.MILLRACE_TILES ?? ''): string[] {
  return text.split(',').flatMap((part) => {
    const address = part.trim()
    if (!URL.canParse(address)) return []
    const { origin, protocol } = new URL(address)
    return protocol === 'https:' || protocol === 'http:' ? [origin] : []
  })
}
