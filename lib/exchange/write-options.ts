import type { PlaceList } from './place'

/** What a written file says of itself, in words of the app. */
export type WriteOptions = {
  readonly title: string
  /** Whose data is in it, where its licence asks for that. */
  readonly attribution?: string
  /** What a list and a field are called, for those who open the file elsewhere. */
  readonly listName: (list: PlaceList) => string
  readonly fieldName: (path: string) => string
}
