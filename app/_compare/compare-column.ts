import type { Plan } from '@/lib/plan'
import type { NameOf } from '../_text'
import type { Compared } from './use-compared'

/** A plan in its column. */
export type CompareColumn = { plan: Plan; names: NameOf; compared: Compared | undefined }
