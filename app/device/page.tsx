import type { Metadata } from 'next'
import { DeviceScreen } from '../_device/device-screen'
import { say } from '../_text'

export const metadata: Metadata = { title: say('device.title') }

export default function DevicePage() {
  return <DeviceScreen />
}
