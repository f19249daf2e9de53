import { expose, transfer } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { bookService } from './book-service'
import type { TypeFiles } from './pdf/type'

const regular = new URL('../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf', import.meta.url)
const bold = new URL('../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf', import.meta.url)

async function bytesOf(address: URL): Promise<Uint8Array> {
  const response = await fetch(address)
  if (!response.ok) throw new Error(`typeface: ${response.status}`)
  return new Uint8Array(await response.arrayBuffer())
}

const findType = async (): Promise<TypeFiles> => {
  const [one, two] = await Promise.all([bytesOf(regular), bytesOf(bold)])
  return { regular: one, bold: two }
}

const service = bookService(findBlob, findType, () => new Promise((resolve) => setTimeout(resolve, 0)))

expose({
  answer: service.answer,
  print: async (...asked: Parameters<typeof service.print>) => {
    const made = await service.print(...asked)
    return transfer(made, [made.bytes.buffer])
  },
})
