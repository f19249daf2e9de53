import compare from '../en/compare.json'
import { addWords } from '../words'

addWords('compare', compare)
