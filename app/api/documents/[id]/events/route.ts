import { z } from 'zod'
import { door } from '@/app/_server/door'
import { DOCUMENT_LIMIT_MB, EVENTS_AT_ONCE } from '@/app/_server/limits'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'
import { addSiteEvents, listSiteEvents } from '@/app/_server/site-events'
import { siteEventSchema } from '@/lib/plan'

type Params = { id: string }

const querySchema = z.strictObject({ after: z.coerce.number().int().min(0).default(0) })

const sendSchema = z.strictObject({ events: z.array(siteEventSchema).min(1).max(EVENTS_AT_ONCE) })

export const GET = door<Params>(async (request, { id }) => {
  const { after } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  return Response.json(await listSiteEvents(await getDatabase(), id, after))
})

export const POST = door<Params>(async (request, { id }) => {
  const { events } = sendSchema.parse(await readJson(request, DOCUMENT_LIMIT_MB))
  return Response.json(await addSiteEvents(await getDatabase(), id, events))
})
