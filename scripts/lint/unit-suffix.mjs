/**
 * In `lib/` a number that is a quantity says its unit at the end of its name: `lift_ft`, not `lift`.
 *
 * Looked at: properties and parameters typed `number` (or a list of numbers), and fields of schemas
 * made by `quantity(…)` or `z.number()`. A name asks for a unit when its last word is a known
 * quantity; ratios, factors, counts and shares have none and end in that word instead.
 */

const QUANTITIES = new Set([
  'flow', 'lift', 'length', 'height', 'width', 'weight', 'distance', 'speed', 'pressure', 'head', 'volume', 'time',
  'duration', 'altitude', 'elevation', 'temperature', 'vacuum', 'loss', 'travel', 'level', 'rate', 'capacity', 'diameter',
  'size', 'depth', 'delay', 'rise', 'residual', 'inflow', 'outflow',
])

const UNIT =
  /^(?:gal|gpm|psi|ft|in|mi|mph|lb|inHg|degF|s|sqft|cuft|min|m|mm|km|kmh|deg|rad|E7|kPa|bar|L|degC|kg|ms|bytes|MB)(?:[A-Z0-9].*)?$/

/** Where the number is a plain count or position by nature, and the word is the language's own. */
const LANGUAGE_WORDS = new Set(['length', 'size'])

/** The quantity that a name speaks of without saying its unit, or undefined. */
export function findBareQuantity(name) {
  const at = name.lastIndexOf('_')
  if (at > 0 && UNIT.test(name.slice(at + 1))) return undefined
  if (LANGUAGE_WORDS.has(name)) return undefined
  const words = name.replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').split(/[ _]+/)
  const last = words.at(-1)?.toLowerCase() ?? ''
  return QUANTITIES.has(last) ? last : undefined
}

/** `number`, `number | undefined`, `number[]`, `readonly number[]`. */
function isNumeric(type) {
  if (!type) return false
  if (type.type === 'TSNumberKeyword') return true
  if (type.type === 'TSArrayType') return isNumeric(type.elementType)
  if (type.type === 'TSTypeOperator') return isNumeric(type.typeAnnotation)
  if (type.type !== 'TSUnionType') return false
  const rest = type.types.filter(({ type: kind }) => kind !== 'TSUndefinedKeyword' && kind !== 'TSNullKeyword')
  return rest.length > 0 && rest.every(isNumeric)
}

/** True for `quantity(…)` and `z.number()` with anything chained after. */
function makesNumber(node) {
  let call = node
  while (call?.type === 'CallExpression' && call.callee.type === 'MemberExpression') {
    const { object, property } = call.callee
    if (object.type === 'Identifier' && object.name === 'z') return property.name === 'number'
    call = object
  }
  return call?.type === 'CallExpression' && call.callee.type === 'Identifier' && call.callee.name === 'quantity'
}

const nameOf = (key) => (key?.type === 'Identifier' ? key.name : undefined)

export const unitSuffix = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { bare: '"{{name}}" is a {{quantity}}: end its name in its unit (_ft, _gpm, …), or in Ratio, Factor, Count or Share.' },
  },
  create(context) {
    const check = (node, name) => {
      const quantity = name && findBareQuantity(name)
      if (quantity) context.report({ node, messageId: 'bare', data: { name, quantity } })
    }
    const checkParameter = (parameter) => {
      const plain = parameter.type === 'AssignmentPattern' ? parameter.left : parameter
      const isDefaultNumber = parameter.type === 'AssignmentPattern' && typeof parameter.right.value === 'number'
      if (plain.type !== 'Identifier') return
      if (isDefaultNumber || isNumeric(plain.typeAnnotation?.typeAnnotation)) check(plain, plain.name)
    }
    const checkFunction = (node) => node.params.forEach(checkParameter)
    const checkTyped = (node) => {
      if (isNumeric(node.typeAnnotation?.typeAnnotation)) check(node, nameOf(node.key))
    }
    return {
      FunctionDeclaration: checkFunction,
      FunctionExpression: checkFunction,
      ArrowFunctionExpression: checkFunction,
      TSFunctionType: checkFunction,
      TSMethodSignature: checkFunction,
      TSPropertySignature: checkTyped,
      PropertyDefinition: checkTyped,
      Property(node) {
        if (makesNumber(node.value)) check(node, nameOf(node.key))
      },
    }
  },
}
