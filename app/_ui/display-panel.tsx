'use client'

import Link from 'next/link'
import { Popover } from 'radix-ui'
import { themes } from '../_look/theme'
import { say, unitSystems } from '../_text'
import '../_text/areas/help'
import { Button } from './button'
import styles from './display-choice.module.css'
import { Segments } from './segments'
import { useTheme } from './theme-context'
import { useUnitSystem } from './unit-system-context'

const themeChoices = ['system', ...themes] as const

export type DisplayChoiceProps = { hasHelp?: boolean }

/** The button with its panel, which is open at first. */
export function DisplayPanel({ hasHelp = false }: DisplayChoiceProps) {
  const [system, chooseSystem] = useUnitSystem()
  const [theme, chooseTheme] = useTheme()
  return (
    <Popover.Root defaultOpen>
      <Popover.Trigger asChild>
        <Button look="quiet" size="s" icon="display" label={say('shell.display')} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.panel} align="end" sideOffset={6} collisionPadding={8} aria-label={say('shell.display.title')}>
          <Segments
            label={say('shell.units')}
            value={system}
            choices={unitSystems.map((value) => ({ value, label: say(`quantity.system.${value}`) }))}
            onCommit={chooseSystem}
          />
          <Segments
            label={say('shell.theme.label')}
            value={theme ?? 'system'}
            choices={themeChoices.map((value) => ({ value, label: say(`shell.theme.${value}`) }))}
            onCommit={(value) => { chooseTheme(value === 'system' ? undefined : value) }}
          />
          {hasHelp && <Link href="/help">{say('help.title')}</Link>}
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  )
}
