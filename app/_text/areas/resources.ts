import resources from '../en/resources.json'
import { addWords } from '../words'

addWords('resources', resources)
