import type { Issue } from '../issue'

/** Whether an issue says that an answer counts on water nobody has measured: no number stands for it, so no doubt about it is drawn. */
export const isUnknownWater = ({ code, severity }: Issue): boolean => severity === 'warn' && (code === 'source-volume-unknown' || code === 'source-flow-unknown')
