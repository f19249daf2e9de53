import review from '../en/review.json'
import { addWords } from '../words'

addWords('review', review)
