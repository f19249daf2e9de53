import hose from '../en/hose.json'
import { addWords } from '../words'

addWords('hose', hose)
