/** A plan run against a clock: what comes over it, what is decided, and what the water does. */
export { effectsOf, type FactEffect } from './debrief'
export { difficulties, drawInjects, type Difficulty, type DrawnTrouble } from './draw-injects'
export { injectFrom, possibleTroubles, troubleFigures, troubles, troubleWeight, type PossibleTrouble, type Trouble } from './inject-library'
export { factOf, isSession, playSession, replay, startSession, stateAt, takeEffect, type InjectCame, type Session } from './session'
export { sessionChart } from './session-chart'
export { readSession, sessionShortfall, type SessionRecord } from './session-record'
export { shortfallOf, type Shortfall } from './shortfall'
export { nextEventAt, viewOf, type ExerciseView, type FillView, type TankView, type TenderView } from './view'
