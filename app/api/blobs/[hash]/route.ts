import { z } from 'zod'
import { getBlob, putBlob } from '@/app/_server/blobs'
import { door } from '@/app/_server/door'
import { BLOB_LIMIT_MB } from '@/app/_server/limits'
import { getDatabase } from '@/app/_server/open-database'
import { readBytes } from '@/app/_server/read-body'

const paramsSchema = z.strictObject({ hash: z.string().regex(/^[0-9a-f]{64}$/) })
const querySchema = z.strictObject({ kind: z.string().regex(/^[a-z][a-z-]{0,30}$/) })

type Params = { hash: string }

export const GET = door<Params>(async (_request, params) => {
  const { hash } = paramsSchema.parse(params)
  const { bytes } = await getBlob(await getDatabase(), hash)
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/octet-stream',
      // The name is the hash of the content, so what is under it never changes.
      'Cache-Control': 'private, max-age=31536000, immutable',
    },
  })
})

export const PUT = door<Params>(async (request, params) => {
  const { hash } = paramsSchema.parse(params)
  const { kind } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  await putBlob(await getDatabase(), hash, kind, await readBytes(request, 'application/octet-stream', BLOB_LIMIT_MB))
  return new Response(null, { status: 204 })
})
