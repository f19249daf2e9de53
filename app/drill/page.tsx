import type { Metadata } from 'next'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import '../_text/areas/drill'
import { DrillScreen } from './drill-screen'

export const metadata: Metadata = { title: say('drill.title') }

/** The prime drill with a plausible pumper, for whoever has no district open. */
export default function DrillPage() {
  return (
    <Shell title={say('drill.title')}>
      <DrillScreen />
    </Shell>
  )
}
