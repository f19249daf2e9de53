/** @type {import('next').NextConfig} */
const config = {
  // The tests build into a folder of their own, so that they never disturb a running app.
  distDir: process.env.MILLRACE_BUILD || '.next',
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Native code inside: loaded by Node from node_modules, not bundled.
  serverExternalPackages: ['@prisma/adapter-libsql', '@libsql/client', 'libsql'],
  // `npm run types` checks every file, tests included; the build need not do it a second time.
  typescript: { ignoreBuildErrors: true },
}

export default config
