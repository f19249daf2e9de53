import help from '../en/help.json'
import { addWords } from '../words'

addWords('help', help)
