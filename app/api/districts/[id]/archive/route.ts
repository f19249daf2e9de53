import { ARCHIVE_ENDING, ARCHIVE_TYPE } from '@/app/_server/archive/archive-form'
import { gatherArchive } from '@/app/_server/archive/gather-archive'
import { archiveFileName, packArchive } from '@/app/_server/archive/pack-archive'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'

export const GET = door<{ id: string }>(async (_request, { id }) => {
  const gathered = await gatherArchive(await getDatabase(), id, new Date())
  const name = archiveFileName(gathered.manifest.district.name, gathered.manifest.madeAt, ARCHIVE_ENDING)
  const pieces = packArchive(gathered)
  const body = new ReadableStream<Uint8Array>({
    pull: async (controller) => {
      const { done, value } = await pieces.next()
      if (done) controller.close()
      else controller.enqueue(value)
    },
    cancel: async () => {
      await pieces.return(undefined)
    },
  })
  return new Response(body, {
    headers: {
      'Content-Type': ARCHIVE_TYPE,
      'Content-Disposition': `attachment; filename="district${ARCHIVE_ENDING}"; filename*=UTF-8''${encodeURIComponent(name)}`,
    },
  })
})
