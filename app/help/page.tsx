import type { Metadata } from 'next'
import { HelpScreen } from '../_help/help-screen'
import { say } from '../_text'
import '../_text/areas/help'

export const metadata: Metadata = { title: say('help.title') }

export default function HelpPage() {
  return <HelpScreen />
}
