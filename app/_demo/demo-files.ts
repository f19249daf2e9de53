/** Where the demo district is kept, under public/demo. */
export const demoFiles = {
  map: 'ostrel-valley.osm.gz',
  elevation: 'ostrel-valley-elevation.tif',
  district: 'district.json',
  plans: 'plans.json',
  bundleOf: (planId: string): string => `bundles/${planId.replace(/^plan-/, '')}.json`,
} as const

export const demoFolder = new URL('../../public/demo/', import.meta.url)
