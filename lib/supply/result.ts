import { z } from 'zod'
import { evidenceMarks } from '../evidence'
import { legSources } from '../plan'

/**
 * The answer to a plan. Quantities carry their unit in the name; all times are seconds from
 * dispatch unless said. `null` stands where a figure has no value: the plan is blocked, or
 * the thing never happens within the horizon. Nothing is 0 or infinite for want of knowledge.
 */
const figure = z.number().nullable()

const severitySchema = z.enum(['block', 'warn', 'note'])

const issueSchema = z.strictObject({
  code: z.string(),
  severity: severitySchema,
  subjectIds: z.array(z.string()),
  values: z.record(z.string(), z.union([z.number(), z.string()])),
})

const linkKinds = ['fillRate', 'fillHandling', 'source', 'road', 'dumpRate', 'dumpHandling', 'portableTank', 'dumpPump', 'hoseLay'] as const

const linkSchema = z.strictObject({
  kind: z.enum(linkKinds).describe('part of the chain from source to fire ground'),
  subjectId: z.string().describe('fill site, dump site or source it belongs to'),
  gain_gpm: z.number().describe('what the sustainable flow gains when this part alone is a tenth better'),
})

export const chainParts = ['source', 'fill', 'road', 'dump', 'fireGround'] as const

const chainPartSchema = z.strictObject({
  part: z.enum(chainParts),
  capacity_gpm: figure.describe('what this part could pass if the others were no hindrance; null: not known, no water is named'),
  subjectIds: z.array(z.string()),
})

const waterBalanceSchema = z.strictObject({
  initial_gal: z.number(),
  drawn_gal: z.number().describe('from the sources'),
  delivered_gal: z.number().describe('to the fire ground'),
  stored_gal: z.number().describe('in portable tanks and engines at the end'),
  inTransit_gal: z.number().describe('aboard tenders at the end'),
  spilled_gal: z.number(),
  error_gal: z.number().describe('initial + drawn − delivered − stored − in transit − spilled'),
})

const fillSiteResultSchema = z.strictObject({
  kind: z.literal('fillSite'),
  id: z.string(),
  lift_ft: figure.describe('lift counted: as measured, and what the season adds'),
  seasonDrop_ft: figure.describe('part of the lift that the season adds; 0: none, or its fall is not known'),
  liftFrom: z.enum(['plan', 'measured', 'elevations', 'assumed']).nullable().describe('how the lift without the season was found; assumed: nobody measured it, typed or not; null: no draft'),
  draft_gpm: figure.describe('most the pumper can draft here at the pressure the fill lines need'),
  draftLimit: z.enum(['suction', 'pump', 'lift', 'measured', 'hydrant']).nullable(),
  gaugeLow_inHg: figure,
  gaugeHigh_inHg: figure,
  margin_ft: figure.describe('suction head to spare at that flow; negative: feet of lift too many'),
  bayRate_gpm: z.array(z.number()).describe('into each tender, by how many bays are filling'),
  fillLimit: z.enum(['draft', 'pressure', 'inlet', 'vent', 'measured', 'lay']).nullable(),
  ready_s: figure,
  busyShare: figure.describe('time its bays are taken, averaged'),
  waiting_s: figure.describe('all waiting for a bay, planned run'),
  bayOrders: z
    .strictObject({ together_gpm: z.number(), oneAtATime_gpm: z.number() })
    .nullable()
    .describe('sustainable flow with bays sharing the pump, and with one filling while the next stands hooked up; null: one bay, or not worked out'),
})

const dumpSiteResultSchema = z.strictObject({
  kind: z.literal('dumpSite'),
  id: z.string(),
  capacity_gal: z.number(),
  draftLimit_gal: figure.describe('left in the tanks when the draft is lost at the planned flow'),
  pump_gpm: figure.describe('most its pumper can send on'),
  ready_s: figure,
  pumpReady_s: figure,
  busyShare: figure,
  waiting_s: figure.describe('all waiting for a position, planned run'),
})

const layResultSchema = z.strictObject({
  id: z.string(),
  toId: z.string().describe('fill site, dump site or the fire ground'),
  flow_gpm: z.number(),
  start_s: z.number().describe('laying begins'),
  ready_s: z.number().describe('laid, charged and at its flow'),
  pumperIds: z.array(z.string()).describe('that pump, of those at hand'),
  fed_gal: figure.describe('brought in the planned run; null where it is the whole supply of a fill site, whose tenders carry it on'),
})

const laterFlowSchema = z.strictObject({
  from_s: z.number(),
  flow_gpm: z.number().describe('greatest constant flow from then on to the end, the flow held so far before it'),
  layIds: z.array(z.string()).describe('that stand from then on'),
})

const tenderResultSchema = z.strictObject({
  id: z.string(),
  fillSiteId: z.string().nullable(),
  dumpSiteId: z.string().nullable(),
  usable_gal: figure,
  arrive_s: figure,
  toFill_s: figure,
  toDump_s: figure,
  fill_s: figure.describe('filling alone in a bay'),
  dump_s: figure.describe('dumping into a tank with room'),
  handling_s: figure.describe('positions, hook-up and clearing, both ends'),
  cycle_s: figure.describe('a round with no waiting'),
  hand_gpm: figure,
  rounds: figure,
  waitingShare: figure,
})

const legResultSchema = z.strictObject({
  fromId: z.string(),
  toId: z.string(),
  apparatusId: z.string(),
  load: z.enum(['full', 'empty']),
  by: z.enum(legSources).nullable().describe('null: there is no way'),
  distance_mi: figure,
  travel_s: figure,
  isStraight: z.boolean().describe('straight line times the road factor'),
  key: z.string(),
})

const assumptionSchema = z.strictObject({
  itemId: z.string(),
  field: z.string(),
  value: z.number(),
  mark: z.enum(['computed', 'handbook', 'assumed']),
  source: z.string(),
  isDefault: z.boolean().describe('true when nobody entered a number'),
})

const firstToMeasureSchema = z.strictObject({
  itemIds: z.array(z.string()).describe('whose number it is; a default nobody replaced may belong to many'),
  otherId: z.string().optional().describe('the other end, where it is the way between two places'),
  field: z.string(),
  value: z.number(),
  mark: z.enum(evidenceMarks),
  spreadShare: z.number().describe('half the range the number may lie in, as a share of it'),
  share: z.number().describe('of the doubt about the flow (its variance over the nights) that this number explains by itself'),
  shareError: z.number().describe('standard error of that share'),
})

const dependableSchema = z.strictObject({
  flow_gpm: z.number().describe('greatest flow sustained in the share of the nights'),
  share: z.number().describe('of the nights that hold it'),
  shareError: z.number().describe('standard error of that share'),
  low_gpm: z.number().describe('the flow for the share plus one standard error'),
  high_gpm: z.number().describe('the flow for the share less one standard error'),
  nightCount: z.number().int(),
  seed: z.number().int().describe('of the nights: the same seed gives the same answer everywhere'),
})

export const resultSchema = z.strictObject({
  format: z.literal('millrace-result'),
  version: z.literal(1),
  planId: z.string(),
  planName: z.string(),
  sustainable_gpm: figure.describe('greatest constant flow at the fire ground, from supply ready, that is hauled and never short'),
  dependable: dependableSchema.optional().describe('only when asked for: the flow held when times and rates vary as their evidence says; nothing breaks'),
  stored_gpm: figure.describe('the same when stored water may be used up within the duration'),
  hauledCapacity_gpm: figure.describe('into the dump sites when their tanks are never full'),
  hand_gpm: figure.describe('handbook: usable gallons over fill, travel and dump time, summed over tenders'),
  needed_gpm: figure.describe('peak stage of the demand; null when neither plan nor hazard says'),
  duration_s: z.number().describe('from supply ready, that the flows are held for'),
  firstArrival_s: figure,
  firstWater_s: figure,
  tankEmpty_s: figure.describe('the first-due engine’s tank is empty; null: it does not run empty before supply is ready, or no first-due engine with a tank, or no needed flow, is known: the issues say which'),
  supplyReady_s: figure,
  gap_s: figure.describe('from tank empty to supply ready; 0 when there is none; null when it is not known, for want of a first-due engine with a tank or of a needed flow'),
  short_s: figure.describe('time the planned demand is not met, after first water is due'),
  limitingLink: linkSchema.nullable().describe('null: no part alone makes a difference, or the plan is blocked'),
  links: z.array(linkSchema).describe('all of them, greatest gain first'),
  chain: z.array(chainPartSchema).describe('the parts from source to fire ground; empty when the plan is blocked'),
  waterBalance_gal: waterBalanceSchema.nullable(),
  sites: z.array(z.discriminatedUnion('kind', [fillSiteResultSchema, dumpSiteResultSchema])),
  tenders: z.array(tenderResultSchema),
  lays: z.array(layResultSchema).optional().describe('hose lays that count in the flow; absent without any'),
  laterFlows: z.array(laterFlowSchema).optional().describe('by time: what is held once a hose lay takes over after supply was ready without it; absent where none raises it'),
  legs: z.array(legResultSchema),
  firstToMeasure: firstToMeasureSchema.nullable().describe('the number that explains most of the doubt about the flow; null: none does, or the dependable flow was not asked for'),
  unmeasured: z.array(assumptionSchema).describe('the inputs that nobody has measured, each with how it is known: assumed, from a handbook, or computed; the headline counts these'),
  issues: z.array(issueSchema).describe('by what they do to the flow, greatest first'),
})

export type ChainPart = z.infer<typeof chainPartSchema>
export type Link = z.infer<typeof linkSchema>
export type LinkKind = (typeof linkKinds)[number]
export type FillSiteResult = z.infer<typeof fillSiteResultSchema>
export type DumpSiteResult = z.infer<typeof dumpSiteResultSchema>
export type TenderResult = z.infer<typeof tenderResultSchema>
export type DependableFlow = z.infer<typeof dependableSchema>
export type LegResult = z.infer<typeof legResultSchema>
export type FirstToMeasure = z.infer<typeof firstToMeasureSchema>
export type Assumption = z.infer<typeof assumptionSchema>
export type SupplyResult = z.infer<typeof resultSchema>
