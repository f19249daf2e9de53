import type { Point } from '@/lib/geo'
import { pointFromSpot } from '../frame'

/** Spots the documents stand on, metres east and north in the frame; each lies on a road or at a building of the map. */
const spots = {
  station1: [5668, 5364], station2: [8629, 3354], station7: [489, 3664],
  boatLaunch: [4938, 7296], damSpillway: [4979, 7137], millYard: [5473, 5690], coveredBridge: [3452, 4304], ironBridge: [1094, 2995],
  applegarth: [2723, 4514], coopers: [8470, 3412], cistern: [8606, 3552], kettlePond: [6242, 7438], fordLane: [8748, 3020],
  reservoir: [4700, 7400], millPond: [5400, 5740], river: [3450, 4288], riverIron: [1105, 2968], applegarthPond: [2684, 4514],
  coopersPond: [8380, 3440], kettle: [6220, 7480], fiddlers: [8740, 2990], hydrants: [5874, 5420],
  yarrowBarn: [3020, 3160], school: [9012, 3186], schoolFront: [9005, 3221], feedMill: [5882, 5290], ganderHouse: [6190, 7314], ganderFront: [6178, 7325], sugarhouse: [2694, 7714],
  yarrowYard: [2900, 3163], ganderYard: [6146, 7262], schoolYard: [8952, 3228], feedYard: [5850, 5318],
  coldSpringBridge: [1502, 2291], crossHill: [7357, 2960], hollowRun: [6894, 8144],
} as const

export type PlaceKey = keyof typeof spots

export const place = (key: PlaceKey): Point => pointFromSpot({ x: spots[key][0], y: spots[key][1] })
