/** True when two touched paths speak of the same thing: equal, or one holds the other. */
export const pathsOverlap = (a: string, b: string): boolean => a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`)
