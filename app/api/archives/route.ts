import { z } from 'zod'
import { ARCHIVE_TYPE } from '@/app/_server/archive/archive-form'
import { readArchive } from '@/app/_server/archive/read-archive'
import { restoreArchive } from '@/app/_server/archive/restore-archive'
import { door } from '@/app/_server/door'
import { ARCHIVE_LIMIT_MB } from '@/app/_server/limits'
import { getDatabase } from '@/app/_server/open-database'
import { readBytes } from '@/app/_server/read-body'

const querySchema = z.strictObject({ copy: z.literal('1').optional() })

export const POST = door(async (request) => {
  const { copy } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  const archive = await readArchive(await readBytes(request, ARCHIVE_TYPE, ARCHIVE_LIMIT_MB))
  const restored = await restoreArchive(await getDatabase(), archive, { asCopy: copy === '1' })
  return Response.json(restored, { status: restored.outcome === 'already-here' ? 200 : 201 })
})
