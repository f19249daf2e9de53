import law from '../en/law.json'
import { addWords } from '../words'

addWords('law', law)
