import type { Evidence } from '@/lib/evidence'

/** Who measured, by role: nobody in the demo has a name. */
export const measured = (by: string, on: string, spreadShare?: number): Evidence => ({ mark: 'measured', by, on, ...(spreadShare !== undefined && { spreadShare }) })

export const handbook = (source: string): Evidence => ({ mark: 'handbook', source })

export const rating = handbook('rated capacity at draft: 150 psi net, 10 ft lift, 20 ft of hard suction')
export const nominal = handbook('maker’s plate')

export const captain1 = 'Capt., Station 1'
export const captain2 = 'Capt., Station 2'
export const waterOfficer = 'Water supply officer'
export const pumpTester = 'Pump test crew'
export const scales = 'Weighed, county scales'
