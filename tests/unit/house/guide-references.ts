/** Words in backquotes that look like places in the project: `lib/plan`, `tests/unit/house/…`, `proxy.ts`. */
export function placesNamedIn(text: string): string[] {
  const named = [...text.matchAll(/`([^`\n]+)`/g)].map(([, inner]) => inner ?? '')
  return named.filter((word) => /^[\w.@-]+(?:\/[\w.@[\]-]*)+$/.test(word) || /^[\w.-]+\.(?:ts|tsx|mjs|json|md|prisma)$/.test(word))
}

/** Scripts of package.json named by a command: `npm test`, `npm start`, `npm run lint`. */
export function scriptsNamedIn(text: string): string[] {
  const commands = [...text.matchAll(/\bnpm (?:run (?:-s )?([\w:-]+)|(test|start))\b/g)]
  return [...new Set(commands.map(([, script, short]) => script ?? short ?? ''))]
}
