'use client'

import dynamic from 'next/dynamic'
import { say } from '@/app/_text'
import styles from './map.module.css'

/** The district map, drawn from the district's own data with no tile server. Only in a browser: the page shows its place until then. */
export const DistrictMap = dynamic(() => import('./map-view'), {
  ssr: false,
  loading: () => <div className={styles.frame} role="status" aria-label={say('map.loading')} />,
})
