/** Figures that the help explains, and keys it names, in its order. */
export const helpFigures = ['dependable', 'expected', 'needed', 'hauled', 'hand', 'ready', 'gap', 'limit', 'lift', 'suction', 'evidence'] as const
export const helpKeys = ['find', 'undo', 'redo', 'next', 'take', 'known', 'leave', 'move', 'levers', 'clock'] as const
export const helpSheets = ['hose', 'round', 'gauge', 'highest', 'last'] as const

/** Address of what the help says about one of its figures. */
export const helpFigureHref = (figure: (typeof helpFigures)[number]): string => `/help#${figureAnchor(figure)}`
export const figureAnchor = (figure: (typeof helpFigures)[number]): string => `figure-${figure}`
