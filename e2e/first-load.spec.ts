import { expectAccessible } from './support/expect-accessible'
import { firstScripts } from './support/script-bytes'
import { expect, test } from './support/test'

test('the first page loads, is accessible, and says nothing wrong on the console', async ({ page }) => {
  const response = await page.goto('/')
  expect(response?.status()).toBe(200)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await expectAccessible(page)
})

test('every page forbids whatever does not come from this server', async ({ page }) => {
  const response = await page.goto('/')
  const policy = response?.headers()['content-security-policy'] ?? ''
  expect(policy).toContain("default-src 'self'")
  expect(policy).toContain("frame-ancestors 'none'")
  expect(policy).not.toMatch(/script-src[^;]*'unsafe/)
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1]
  const again = (await page.goto('/'))?.headers()['content-security-policy']
  expect(nonce).toBeTruthy()
  expect(again).not.toContain(nonce)
  expect(response?.headers()).toMatchObject({
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'permissions-policy': expect.stringContaining('geolocation=(self)') as unknown,
  })
})

test('no main page begins with more script than its limit, packed as it comes over the wire', async ({ server, request }) => {
  const { documents } = (await (await request.get('/api/documents')).json()) as { documents: { id: string; kind: string }[] }
  const idOf = (kind: string) => documents.find((one) => one.kind === kind)?.id ?? ''
  const district = `/district/${idOf('district')}`
  // In kB. Whatever can come when it is asked for does: who meets a limit looks for that first, and raises the limit last.
  const limits = {
    '/': 225, [`${district}/survey`]: 265, [`${district}/resources`]: 240, [`${district}/plan`]: 235, [`${district}/plan/${idOf('plan')}`]: 250,
    [`${district}/exercise/${idOf('exercise')}`]: 400, [`${district}/log/${idOf('log')}`]: 295, [`${district}/log/${idOf('log')}/review`]: 290,
  }
  for (const [page, limit] of Object.entries(limits)) {
    const files = [...(await firstScripts(server.address, page))].sort((a, b) => b[1] - a[1])
    const whole = files.reduce((sum, [, bytes]) => sum + bytes, 0) / 1000
    expect.soft(whole, `${page}, in kB: ${files.map(([file, bytes]) => `${file.replace(/^.*\//, '')} ${Math.round(bytes / 1000)}`).join(', ')}`).toBeLessThan(limit)
  }
})

test.describe('a script written into a page', () => {
  test.use({ expectedErrors: [/Executing inline script violates/] })

  test('does not run', async ({ page }) => {
    await page.goto('/')
    const ran = await page.evaluate(() => {
      const script = document.createElement('script')
      script.textContent = 'window.injected = true'
      document.body.append(script)
      return 'injected' in window
    })
    expect(ran).toBe(false)
  })
})

test.describe('requests from elsewhere', () => {
  test('a change sent by another site is refused', async ({ request }) => {
    const sent = { headers: { Origin: 'https://elsewhere.example', 'Content-Type': 'application/json' }, data: '{"doc":{}}' }
    const answer = await request.post('/api/documents', sent)
    expect(answer.status()).toBe(403)
    expect(await answer.json()).toMatchObject({ error: { code: 'other-origin' } })
  })

  test('a change that the browser marks as cross-site is refused', async ({ request }) => {
    const headers = { 'Sec-Fetch-Site': 'cross-site', 'Content-Type': 'application/json' }
    expect((await request.post('/api/documents', { headers, data: '{"doc":{}}' })).status()).toBe(403)
  })

  test('a foreign name that leads here is not answered, by pages or by the API', async ({ request }) => {
    for (const path of ['/', '/api/documents', '/icon.svg']) {
      expect((await request.get(path, { headers: { Host: 'rebound.example' } })).status(), path).toBe(421)
    }
  })
})
