/** One bit each, in the flags of a road. Stored in graphs: never renumber within a version. */
export const roadFlag = {
  bridge: 1 << 0,
  tunnel: 1 << 1,
  ford: 1 << 2,
  roundabout: 1 << 3,
  /** Travel allowed only along the drawn direction. */
  onewayForward: 1 << 4,
  onewayBackward: 1 << 5,
  /** Direction changes with the hour: nobody here knows it. */
  reversible: 1 << 6,
  /** Closed to motor vehicles by tag. */
  noAccess: 1 << 7,
  /** Private, destination, forestry and the like: a fire apparatus may enter, through traffic may not. */
  limitedAccess: 1 << 8,
  /** Signed against heavy goods vehicles: a fire apparatus is exempt, but the reason may be the road itself. */
  heavyBanned: 1 << 9,
  /** Somebody states that no weight limit is posted. */
  weightPostedNone: 1 << 10,
  /** A weight limit that holds only at times or for some, or is given by axle: not checked here. */
  weightOtherwise: 1 << 11,
  unpaved: 1 << 12,
  /** Grass, mud, sand or a soft track: may not bear a loaded tender. */
  soft: 1 << 13,
  /** One lane for both directions, or narrower than 12 ft. */
  narrow: 1 << 14,
  passingPlaces: 1 << 15,
  movableBridge: 1 << 16,
  /** Mapped as too rough for any wheeled vehicle of this kind. */
  impassable: 1 << 17,
  /** Dry weather, winter or ice road. */
  seasonal: 1 << 18,
  lengthPosted: 1 << 19,
} as const
export type RoadFlag = keyof typeof roadFlag
