import home from '../en/home.json'
import { addWords } from '../words'

addWords('home', home)
