import { helpFigureHref, helpFigures, helpKeys, helpSheets } from '../_links/help-topics'
import { themes } from '../_look/theme'
import { say, unitSystems } from '../_text'
import '../_text/areas/help'
import '../_text/areas/find'
import { screenHref } from '../_links/screens'
import type { FindAct, Located } from './find-entry'

const HELP = { group: 'help', icon: 'note', districtId: undefined } as const

/** What the help explains: figures, tables and keys, by their names and by the words the trade uses for them. */
export const helpEntries = (): Located[] => [
  ...helpFigures.map((one): Located => ({ ...HELP, id: `figure-${one}`, label: say(`help.figure.${one}`), note: say('find.help'), also: `${say(`find.also.figure.${one}`)} ${say(`help.figure.${one}.text`)}`, href: helpFigureHref(one) })),
  ...helpSheets.map((one): Located => ({ ...HELP, id: `sheet-${one}`, label: say(`find.sheet.${one}`), note: say('find.help'), also: say(`find.also.sheet.${one}`), href: '/help#help-sheets' })),
  ...helpKeys.filter((one) => one !== 'undo' && one !== 'redo').map((one): Located => ({ ...HELP, id: `key-${one}`, label: say(`help.key.${one}`), note: say(`help.key.${one}.keys`), also: say('find.also.keys'), href: '/help#help-keys' })),
]

/** What can be done from the list itself, or is begun on a page. */
export function actEntries(districtId: string | undefined, nameOf: (id: string | undefined) => string | undefined): Located[] {
  const act = (id: string, label: string, note: string, also: string, what: FindAct): Located => ({ id: `act-${id}`, group: 'act', icon: 'check', label, note, also, href: '', act: what, districtId: undefined })
  return [
    ...(districtId === undefined ? [] : (['plan', 'exercise', 'log'] as const).map((screen): Located => ({
      id: `new-${screen}`, group: 'act', icon: 'add', label: say(`find.new.${screen}`), note: nameOf(districtId) ?? '', also: say(`find.also.new.${screen}`), href: screenHref(screen, districtId), districtId,
    }))),
    act('undo', say('plan.undo'), say('help.key.undo.keys'), say('find.also.undo'), { kind: 'undo' }),
    act('redo', say('plan.redo'), say('help.key.redo.keys'), say('find.also.undo'), { kind: 'redo' }),
    ...unitSystems.map((system) => act(`units-${system}`, say(`quantity.system.${system}`), say('shell.units'), say('find.also.units'), { kind: 'units', system })),
    ...themes.map((theme) => act(`theme-${theme}`, say(`shell.theme.${theme}`), say('shell.theme.label'), say('find.also.theme'), { kind: 'theme', theme })),
  ]
}
