/** How many of these fields of an item somebody has entered. */
export const countSet = <T extends object>(item: T, fields: readonly (keyof T)[]): number => fields.filter((field) => item[field] !== undefined).length
