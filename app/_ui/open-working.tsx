'use client'

import dynamic from 'next/dynamic'

/** How a figure came about, loaded when somebody asks. */
export const WorkingPanel = dynamic(() => import('./working-panel').then((made) => made.WorkingPanel), { ssr: false })
