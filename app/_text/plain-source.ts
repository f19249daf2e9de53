import { say } from './say'

/**
 * Where a figure comes from, as an officer reads it. In code each source carries how well it was checked ("seen", "from memory");
 * on screen that is said in plain words, and what was seen in a publication needs none.
 */
export function plainSource(source: string): string {
  return source
    .replace(/\(?\b(?:from memory)\b\)?/g, (found) => (found.startsWith('(') ? `(${say('evidence.source.unchecked')})` : say('evidence.source.unchecked')))
    .replace(/\(?\b(?:seen )?second hand\b\)?/g, (found) => (found.startsWith('(') ? `(${say('evidence.source.quoted')})` : say('evidence.source.quoted')))
    .replace(/,? ?\(seen\)/g, '')
    .replace(/, seen\)/g, ')')
    .replace(/\bno source\b/g, say('evidence.source.none'))
}
