import draft from '../en/draft.json'
import { addWords } from '../words'

addWords('draft', draft)
