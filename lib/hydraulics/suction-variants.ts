import type { StrainerKind } from './strainer'
import type { IntakePlace, SuctionSetup } from './suction-setup'

/** What was changed against the set-up it was made from. */
export type SuctionChange = 'none' | 'size' | 'lines' | 'length' | 'strainer' | 'intake' | 'pipe'
export type SuctionVariant = { readonly change: SuctionChange; readonly setup: SuctionSetup }

const SIZES_IN = [4, 4.5, 5, 6] as const
const LENGTHS_FT = [10, 20, 30] as const
const STRAINERS: readonly StrainerKind[] = ['barrel', 'floating', 'low-level']
const INTAKES: readonly IntakePlace[] = ['side', 'front', 'rear']
const PIPES_IN = [6, 8] as const

/**
 * A set-up and those that differ from it in one thing: what each change is worth.
 *
 * @param own           first in the list
 * @param intakeLoss_ft measured loss of the pumper's front or rear intake at 1,000 gpm; absent: assumed
 */
export function changedByOne(own: SuctionSetup, intakeLoss_ft?: number): readonly SuctionVariant[] {
  const { dryHydrant, intake = 'side', strainer = 'barrel' } = own
  const hasHydrant = dryHydrant !== undefined
  return [
    { change: 'none', setup: own },
    ...SIZES_IN.filter((size_in) => size_in !== own.size_in).map((size_in) => variant('size', own, { size_in })),
    variant('lines', own, { lineCount: own.lineCount === 1 ? 2 : 1 }),
    ...LENGTHS_FT.filter((length_ft) => length_ft !== own.length_ft).map((length_ft) => variant('length', own, { length_ft })),
    // A dry hydrant has a strainer of its own.
    ...(hasHydrant ? [] : STRAINERS.filter((kind) => kind !== strainer).map((kind) => variant('strainer', own, { strainer: kind, strainerExtraAt1000gpm_ft: undefined }))),
    ...INTAKES.filter((place) => place !== intake).map((place) => variant('intake', own, { intake: place, intakeExtraAt1000gpm_ft: place === 'side' ? undefined : intakeLoss_ft })),
    ...(hasHydrant ? PIPES_IN.filter((pipe_in) => pipe_in !== dryHydrant.pipe_in).map((pipe_in) => variant('pipe', own, { dryHydrant: { ...dryHydrant, pipe_in } })) : []),
  ]
}

/** Every size, in one line and two, otherwise as the given set-up. */
export function everySize(own: SuctionSetup): readonly SuctionVariant[] {
  return [1, 2].flatMap((lineCount) => SIZES_IN.map((size_in): SuctionVariant => {
    const isOwn = size_in === own.size_in && lineCount === own.lineCount
    return { change: isOwn ? 'none' : size_in === own.size_in ? 'lines' : 'size', setup: { ...own, size_in, lineCount } }
  }))
}

const variant = (change: SuctionChange, own: SuctionSetup, part: { [F in keyof SuctionSetup]?: SuctionSetup[F] | undefined }): SuctionVariant =>
  ({ change, setup: Object.fromEntries(Object.entries({ ...own, ...part }).filter(([, value]) => value !== undefined)) as SuctionSetup })
