import type { Edit } from '@/lib/plan'

/** An edit made here that the server has not answered for. */
export type Unsent = { edit: Edit; touches: readonly string[]; label: string }
