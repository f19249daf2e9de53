/** A number without an exponent, as lists of coordinates ask for (xsd:decimal of XML Schema part 2 knows none). */
export const plainDecimal = (value: number): string => (String(value).includes('e') ? value.toFixed(20).replace(/0+$/, '').replace(/\.$/, '') : String(value))
