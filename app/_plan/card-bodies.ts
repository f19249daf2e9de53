/** What `cards` loads as one. */
export { DumpCard } from './dump-card'
export { FillCard } from './fill-card'
export { FireCard } from './fire-card'
export { RoadCard } from './road-card'
export { TendersCard } from './tenders-card'
