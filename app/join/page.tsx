import type { Metadata } from 'next'
import { JoinScreen } from '@/app/_devices/join-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/devices'

export const metadata: Metadata = { title: say('devices.join.title') }

/** Where another device begins; it needs the station, so for offline use kept: never. */
export default function JoinPage() {
  return <JoinScreen />
}
