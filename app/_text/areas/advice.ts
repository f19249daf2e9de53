import advice from '../en/advice.json'
import { addWords } from '../words'

addWords('advice', advice)
