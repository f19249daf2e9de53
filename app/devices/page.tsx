import type { Metadata } from 'next'
import { DevicesScreen } from '@/app/_devices/devices-screen'
import { loadDevices } from '@/app/_server/devices/load-devices'
import { getDatabase } from '@/app/_server/open-database'
import { say } from '@/app/_text'
import '@/app/_text/areas/devices'

export const metadata: Metadata = { title: say('devices.title') }

/** On the station's own machine only: it lets other devices in. For offline use kept: never. */
export default async function DevicesPage() {
  return <DevicesScreen first={await loadDevices(await getDatabase())} />
}
