import { z } from 'zod'
import { loadDevices } from '@/app/_server/devices/load-devices'
import { endJoinCodes } from '@/app/_server/devices/join-codes'
import { setNetwork } from '@/app/_server/devices/network'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'

const switchSchema = z.strictObject({ isOn: z.boolean() })

export const GET = door(async () => Response.json(await loadDevices(await getDatabase())))

export const PUT = door(async (request) => {
  const { isOn } = switchSchema.parse(await readJson(request, 1))
  const database = await getDatabase()
  await setNetwork(database, isOn)
  if (!isOn) await endJoinCodes(database)
  return Response.json(await loadDevices(database))
})
