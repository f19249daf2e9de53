import book from '../en/book.json'
import { addWords } from '../words'

addWords('book', book)
