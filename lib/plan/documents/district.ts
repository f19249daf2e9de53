import { z } from 'zod'
import { apparatusSchema } from './apparatus'
import { equipmentSchema } from './equipment'
import {
  countField, dayField, flowField, idOf, itemFields, nameField, notesField, evidenceMap, pointField, pressureField, quantity, shareField, timeField, volumeField, weightField,
} from './fields'

/** Where an imported data set came from; its bytes are kept under their SHA-256. */
const dataSetSchema = z.strictObject({
  hash: z.string().regex(/^[0-9a-f]{64}$/).describe('SHA-256 of the stored bytes'),
  name: nameField.describe('file it was imported from'),
  attribution: z.string().max(400),
  importedOn: dayField,
  dataDate: z.string().max(40).optional().describe('date of the data, when the file says'),
})

/** Elevation, with how far its heights may be off. */
export const terrainSetSchema = dataSetSchema.extend({
  verticalDoubt_ft: quantity(0, 300).optional().describe('most heights lie within so much of the truth'),
  doubtBasis: z.enum(['stated', 'published', 'assumed']).optional().describe('how that doubt is known'),
  step_ft: quantity(0, 10_000).optional().describe('from one height to the next'),
})

/** Station: where apparatus comes from. */
const stationSchema = z.strictObject({
  ...itemFields('station'),
  point: pointField,
  turnout_s: timeField.optional().describe('dispatch to wheels rolling'),
  mutualAid: z.boolean().optional(),
})

export const sourceKinds = ['pond', 'lake', 'stream', 'cistern', 'dryHydrant', 'pressureHydrant'] as const

/** Source: water that can be drawn on. */
const sourceSchema = z.strictObject({
  ...itemFields('source'),
  kind: z.enum(sourceKinds),
  point: pointField,
  surfaceElevation_ft: quantity(-1500, 20_000).optional().describe('water surface, usual season'),
  usable_gal: volumeField.optional().describe('water above the strainer that can be taken'),
  surface_sqft: quantity(0, 1e10).optional(),
  deepest_ft: quantity(0, 1000).optional(),
  usableDepth_ft: quantity(0, 1000).optional().describe('depth that can be drawn down above the strainer, less its cover'),
  inflow_gpm: quantity(0, 10_000_000).optional(),
  streamWidth_ft: quantity(0, 5000).optional(),
  streamDepth_ft: quantity(0, 200).optional(),
  floatReach_ft: quantity(0, 5000).optional().describe('length of reach over which a float was timed'),
  float_s: timeField.optional().describe('mean time of the float over that reach'),
  seasonalDrop_ft: quantity(0, 200).optional().describe('fall of the surface in a dry season'),
  droughtDrop_ft: quantity(0, 200).optional().describe('fall of the surface in the drought it is planned for'),
  static_psi: pressureField.optional(),
  residual_psi: pressureField.optional(),
  test_gpm: flowField.optional().describe('flow at the residual pressure in a flow test'),
  water_degF: quantity(28, 130).optional(),
  testedOn: dayField.optional(),
  certifiedOn: dayField.optional(),
  inspectionDue: dayField.optional(),
  access: notesField.optional(),
})

const groundKinds = ['paved', 'gravel', 'firmGrass', 'soft'] as const

/** Draft site: the bank spot where a pumper stands, on a source. */
const draftSiteSchema = z.strictObject({
  ...itemFields('draftSite'),
  sourceId: idOf('source').optional(),
  point: pointField,
  lift_ft: quantity(-20, 200).optional().describe('water surface up to the intake centre line'),
  bankElevation_ft: quantity(-1500, 20_000).optional(),
  intakeHeight_ft: quantity(0, 12).optional().describe('intake centre line above the ground the pumper stands on'),
  waterDepth_ft: quantity(0, 300).optional().describe('water depth where the strainer lies'),
  strainerCover_ft: quantity(0, 300).optional().describe('water over the strainer'),
  hoseRun_ft: quantity(0, 300).optional().describe('hard suction needed from intake to strainer'),
  ground: z.enum(groundKinds).optional(),
  dryHydrant: z
    .strictObject({
      pipe_in: quantity(2, 24),
      pipe_ft: quantity(0, 500),
      elbow90Count: countField(0, 20).optional(),
      elbow45Count: countField(0, 20).optional(),
    })
    .optional(),
  turnRound: notesField.optional(),
})

/** Road note: the officer's posting, closure or correction at a point; it survives a new import. */
const roadNoteSchema = z.strictObject({
  ...itemFields('roadNote'),
  point: pointField,
  closed: z.boolean().optional(),
  maxWeight_lb: weightField.optional(),
  maxHeight_ft: quantity(0, 100).optional(),
  maxWidth_ft: quantity(0, 100).optional(),
  speed_mph: quantity(1, 75).optional(),
  oneWay: z.enum(['no', 'forward', 'backward']).optional().describe('along the road as it is drawn in the data'),
})

export const constructionTypes = ['I', 'II', 'III', 'IV', 'V'] as const
/** `officer`: the entered figure; else one of the methods, by its name in lib/demand. */
const neededFlowRules = ['officer', 'rural-standard', 'academy', 'iowa', 'institute', 'rating-schedule'] as const

/** Target hazard: what may burn, and the flow it needs. */
const hazardSchema = z.strictObject({
  ...itemFields('hazard'),
  point: pointField,
  length_ft: quantity(0, 5000).optional(),
  width_ft: quantity(0, 5000).optional(),
  storeyHeight_ft: quantity(0, 100).optional(),
  storeyCount: countField(1, 60).optional(),
  ridgeHeight_ft: quantity(0, 200).optional().describe('ridge above the eaves'),
  occupancyClass: countField(3, 7).optional().describe('NFPA 1142 occupancy hazard class, 3 severe to 7 light'),
  constructionType: z.enum(constructionTypes).optional(),
  isDwelling: z.boolean().optional(),
  exposureCount: countField(0, 20).optional().describe('structures near enough to be threatened'),
  spacing_ft: quantity(0, 10_000).optional().describe('to the nearest other building'),
  isSprinklered: z.boolean().optional(),
  involvedShare: shareField.optional().describe('part of the floor expected to burn when water is applied'),
  needed_gpm: flowField.optional().describe('flow the officer has set'),
  neededBy: z.enum(neededFlowRules).optional().describe('which figure the plans are held to'),
})

export const districtSchema = z.strictObject({
  format: z.literal('millrace-district').optional(),
  version: z.literal(1).optional(),
  id: idOf('district'),
  name: nameField,
  notes: notesField.optional(),
  evidence: evidenceMap.optional(),
  units: z.enum(['us', 'metric']).optional(),
  bounds: z.strictObject({ south: z.number(), west: z.number(), north: z.number(), east: z.number() }).optional(),
  altitude_ft: quantity(-1500, 18_000).optional(),
  water_degF: quantity(28, 130).optional(),
  barometer_inHg: quantity(15, 33).optional().describe('station pressure corrected to sea level, as a weather report gives it'),
  roadFactor: z.number().min(1).max(5).optional().describe('road distance over straight line, used where no road data answers'),
  average_mph: quantity(5, 75).optional().describe('average speed of the handbook travel formula, default 35'),
  roads: dataSetSchema.optional(),
  map: dataSetSchema.optional(),
  terrain: terrainSetSchema.optional(),
  stations: z.array(stationSchema).max(500),
  sources: z.array(sourceSchema).max(5000),
  draftSites: z.array(draftSiteSchema).max(5000),
  hazards: z.array(hazardSchema).max(5000),
  roadNotes: z.array(roadNoteSchema).max(5000),
  apparatus: z.array(apparatusSchema).max(1000),
  equipment: z.array(equipmentSchema).max(2000),
})

export type DataSet = z.infer<typeof dataSetSchema>
export type TerrainSet = z.infer<typeof terrainSetSchema>
export type Station = z.infer<typeof stationSchema>
export type Source = z.infer<typeof sourceSchema>
export type DraftSite = z.infer<typeof draftSiteSchema>
export type RoadNote = z.infer<typeof roadNoteSchema>
export type Hazard = z.infer<typeof hazardSchema>
export type District = z.infer<typeof districtSchema>
