import advice from './en/advice.json'
import archive from './en/archive.json'
import book from './en/book.json'
import caution from './en/caution.json'
import choice from './en/choice.json'
import compare from './en/compare.json'
import device from './en/device.json'
import devices from './en/devices.json'
import doubt from './en/doubt.json'
import draft from './en/draft.json'
import drill from './en/drill.json'
import entry from './en/entry.json'
import evidence from './en/evidence.json'
import exchange from './en/exchange.json'
import exercise from './en/exercise.json'
import field from './en/field.json'
import find from './en/find.json'
import handbook from './en/handbook.json'
import help from './en/help.json'
import home from './en/home.json'
import hose from './en/hose.json'
import issue from './en/issue.json'
import kit from './en/kit.json'
import law from './en/law.json'
import log from './en/log.json'
import map from './en/map.json'
import plan from './en/plan.json'
import quantity from './en/quantity.json'
import resources from './en/resources.json'
import result from './en/result.json'
import review from './en/review.json'
import server from './en/server.json'
import shell from './en/shell.json'
import survey from './en/survey.json'
import working from './en/working.json'

/** Every word on screen and paper, by area. A new area is one file here and one line in each list. */
const messages = {
  advice, archive, book, caution, choice, compare, device, devices, doubt, draft, drill, entry, evidence, exchange, exercise, field, find, handbook, help, home, hose, issue, kit, law, log, map, plan, quantity, resources, result, review, server, shell, survey, working,
} as const

type Messages = typeof messages
export type Area = keyof Messages

/** Key of a message: its area, a dot, and its key in the area's file. */
export type TextKey = { [A in Area]: `${A}.${Extract<keyof Messages[A], string>}` }[Area]

/** Every key there is. */
export function allKeys(): string[] {
  return Object.entries(messages).flatMap(([area, texts]) => Object.keys(texts).map((key) => `${area}.${key}`))
}
