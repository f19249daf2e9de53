import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { PrintHead } from '@/app/_plan/print-head'
import { ProgressBar } from '@/app/_ui/progress-bar'

test('a print of a plan says when it lacks what was still being worked out, and only then', () => {
  expect(renderToStaticMarkup(<PrintHead isPending />)).toContain('Print again')
  expect(renderToStaticMarkup(<PrintHead isPending={false} />)).not.toContain('Print again')
})

test('a bar that was printed says that what it gives is missing', () => {
  expect(renderToStaticMarkup(<ProgressBar label="Trying" share={0.48} onCancel={() => undefined} />)).toMatch(/Trying: 48%.*Not done yet when this was printed/)
})
