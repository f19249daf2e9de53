import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'

export const GET = door(async () => {
  const database = await getDatabase()
  await database.setting.count()
  return Response.json({ ok: true })
})
