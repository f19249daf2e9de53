import find from '../en/find.json'
import { addWords } from '../words'

addWords('find', find)
