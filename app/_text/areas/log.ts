import log from '../en/log.json'
import { addWords } from '../words'

addWords('log', log)
