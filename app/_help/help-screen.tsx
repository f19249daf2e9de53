'use client'

import { PrintedOn } from '../_frame/printed-on'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import '../_text/areas/help'
import { Button } from '../_ui/button'
import { CheatSheets } from './cheat-sheets'
import { figureAnchor, helpFigures, helpKeys } from '../_links/help-topics'
import shared from '../_look/shared.module.css'
import styles from './help.module.css'

const steps = ['map', 'place', 'units', 'plan', 'check'] as const

/** How to begin, what the figures mean, the keys, and tables to print; paper gets the tables alone. */
export function HelpScreen() {
  return (
    <Shell>
      <div className={styles.page}>
        <PrintedOn />
        <header className={shared.screenOnly}>
          <h1 className={styles.title}>{say('help.title')}</h1>
          <p className={styles.lead}>{say('help.lead')}</p>
        </header>
        <section className={shared.screenOnly} aria-labelledby="help-begin">
          <h2 id="help-begin" className={styles.heading}>{say('help.begin')}</h2>
          <ol className={styles.steps}>{steps.map((step) => <li key={step}>{say(`help.begin.${step}`)}</li>)}</ol>
        </section>
        <section className={shared.screenOnly} aria-labelledby="help-figures">
          <h2 id="help-figures" className={styles.heading}>{say('help.figures')}</h2>
          <dl className={styles.figures}>
            {helpFigures.map((one) => (
              <div key={one} id={figureAnchor(one)} className={styles.figure}>
                <dt>{say(`help.figure.${one}`)}</dt>
                <dd>{say(`help.figure.${one}.text`)}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section className={shared.screenOnly} aria-labelledby="help-keys">
          <h2 id="help-keys" className={styles.heading}>{say('help.keys')}</h2>
          <dl className={styles.figures}>
            {helpKeys.map((one) => (
              <div key={one} className={styles.figure}>
                <dt>{say(`help.key.${one}.keys`)}</dt>
                <dd>{say(`help.key.${one}`)}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section aria-labelledby="help-sheets">
          <div className={styles.head}>
            <h2 id="help-sheets" className={styles.heading}>{say('help.sheets')}</h2>
            <Button className={shared.screenOnly} icon="print" label={say('help.sheets.print')} onClick={() => { window.print() }} />
          </div>
          <p className={styles.lead}>{say('help.sheets.about')}</p>
          <CheatSheets />
          <p className={styles.caution}>{say('help.caution')}</p>
        </section>
      </div>
    </Shell>
  )
}
