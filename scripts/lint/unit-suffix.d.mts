import type { Rule } from 'eslint'

export declare const unitSuffix: Rule.RuleModule
export declare function findBareQuantity(name: string): string | undefined
