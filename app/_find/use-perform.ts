import { useCallback } from 'react'
import { getClient } from '../_client'
import { sayIssue } from '../_text'
import { useTheme } from '../_ui/theme-context'
import { useToast } from '../_ui/toast'
import { useUnitSystem } from '../_ui/unit-system-context'
import type { FindAct } from './find-entry'

/** Does what was found. */
export function usePerform(): (act: FindAct) => void {
  const toast = useToast()
  const [system, chooseSystem] = useUnitSystem()
  const [, chooseTheme] = useTheme()
  return useCallback((act) => {
    if (act.kind === 'units') chooseSystem(act.system)
    else if (act.kind === 'theme') chooseTheme(act.theme)
    else void getClient()[act.kind]().then((refused) => { if (refused) toast({ text: sayIssue(refused, () => undefined, system), look: 'danger' }) })
  }, [toast, system, chooseSystem, chooseTheme])
}
