import { renderToStaticMarkup } from 'react-dom/server'
import { afterEach, expect, test, vi } from 'vitest'
import { DeviceList } from '@/app/_devices/device-list'
import { ToastProvider } from '@/app/_ui/toast'
import type { Grant } from '@/app/_devices/devices'

afterEach(() => { vi.unstubAllEnvs() })

const grant: Grant = { id: 'g', name: 'Engine 2 tablet', scope: { kind: 'district', districtId: 'd' }, createdAt: '2026-03-04T12:00:00.000Z', lastSeenAt: '2026-03-04T23:30:00.000Z', expiresAt: '2026-04-05T00:30:00.000Z' }
const page = () => renderToStaticMarkup(<ToastProvider><DeviceList grants={[grant]} districts={[{ id: 'd', name: 'Ostrel Valley' }]} exercises={[]} onChange={() => undefined} /></ToastProvider>)

// React keeps a page that the server made only where the reader's device makes the same one.
test.each(['America/New_York', 'UTC', 'Pacific/Kiritimati'])('the server in %s writes the same days into the page of devices', (zone) => {
  vi.stubEnv('TZ', zone)
  expect(new Date('2026-03-04T23:30:00.000Z').getDate()).toBe(zone === 'Pacific/Kiritimati' ? 5 : 4)
  expect(page()).toContain('Mar 4, 2026')
  expect(page()).toContain('Apr 5, 2026')
})
