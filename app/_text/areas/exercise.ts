import exercise from '../en/exercise.json'
import { addWords } from '../words'

addWords('exercise', exercise)
