import archive from '../en/archive.json'
import { addWords } from '../words'

addWords('archive', archive)
