import { useCallback } from 'react'
import { getClient } from '../_client'
import { useTheme } from '../_ui/theme-context'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useTellRefused } from '../_ui/use-tell-refused'
import type { FindAct } from './find-entry'

/** Does what was found. */
export function usePerform(): (act: FindAct) => void {
  const tellRefused = useTellRefused()
  const [, chooseSystem] = useUnitSystem()
  const [, chooseTheme] = useTheme()
  return useCallback((act) => {
    if (act.kind === 'units') chooseSystem(act.system)
    else if (act.kind === 'theme') chooseTheme(act.theme)
    else void getClient()[act.kind]().then(tellRefused)
  }, [tellRefused, chooseSystem, chooseTheme])
}
