import type { Metadata } from 'next'
import { HelpScreen } from '../_help/help-screen'
import { say } from '../_text'

export const metadata: Metadata = { title: say('help.title') }

export default function HelpPage() {
  return <HelpScreen />
}
