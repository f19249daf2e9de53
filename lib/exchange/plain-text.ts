const entities: Readonly<Record<string, string>> = { nbsp: ' ', amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

/** A small page as the words in it: marks gone, lines where the page has them. Text without marks stays as it is. */
export function plainText(html: string): string {
  if (!/<[a-z!/]|&[a-z#]/i.test(html)) return html.trim()
  return html
    .replace(/<(script|style)\b[\s\S]*?<\/\1\s*>/gi, '')
    .replace(/<(?:br|\/p|\/tr|\/li|\/div|\/h\d)\b[^>]*>/gi, '\n')
    .replace(/<\/t[dh]\s*>/gi, ' ')
    .replace(/<[^>]*>/g, '')
    .replace(/&(#x?[0-9a-f]+|[a-z]+);/gi, (whole, name: string) => {
      if (!name.startsWith('#')) return entities[name.toLowerCase()] ?? whole
      const code = /^#x/i.test(name) ? parseInt(name.slice(2), 16) : Number(name.slice(1))
      return code > 31 && code <= 0x10ffff ? String.fromCodePoint(code) : ' '
    })
    .split('\n').map((line) => line.replace(/\s+/g, ' ').trim()).filter(Boolean).join('\n')
}
