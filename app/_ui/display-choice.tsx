'use client'

import { say } from '../_text'
import { Button } from './button'
import type { DisplayChoiceProps } from './display-panel'
import { usePart } from './use-part'

const loadPanel = () => import('./display-panel').then(({ DisplayPanel }) => DisplayPanel)

/** Units and light of the screen, in one place; with the way to the help for whoever may open it. */
export function DisplayChoice(props: DisplayChoiceProps) {
  const [Panel, ask] = usePart<DisplayChoiceProps>(loadPanel)
  if (Panel) return <Panel {...props} />
  return <Button look="quiet" size="s" icon="display" label={say('shell.display')} aria-haspopup="dialog" aria-expanded={false} onClick={ask} />
}
