import { headers } from 'next/headers'
import { Shell } from './_frame/shell'
import { BackupNotice } from './_home/backup-notice'
import styles from './_home/home.module.css'
import { NewDistrict } from './_home/new-district'
import { OpenArchive } from './_home/open-archive'
import { OwnDistricts } from './_home/own-districts'
import { wayOf } from './_server/devices/way'
import { say } from './_text'
import './_text/areas/help'
import './_text/areas/devices'
import './_text/areas/archive'
import './_text/areas/home'
import { ButtonLink } from './_ui/button-link'
import { Caution } from './_ui/caution'

const steps = ['survey', 'resources', 'plan', 'book', 'log'] as const

/** The first page: districts and their plans, how to begin, and what to beware of. A device on the network sees no more than the districts it may open. */
export default async function Home() {
  const isStation = wayOf(await headers()).kind === 'station'
  return (
    <Shell>
      <div className={styles.page}>
        <header className={styles.intro}>
          <h1 className={styles.title}>{say('home.title')}</h1>
          <p className={styles.lead}>{say('home.lead')}</p>
          {isStation && <BackupNotice />}
        </header>
        <section className={styles.main} aria-labelledby="districts">
          <h2 id="districts" className={styles.heading}>{say('home.districts')}</h2>
          <OwnDistricts isStation={isStation} />
        </section>
        <div className={styles.side}>
          {isStation && (
            <>
              <section aria-labelledby="new-district">
                <h2 id="new-district" className={styles.heading}>{say('home.new')}</h2>
                <NewDistrict />
              </section>
              <section aria-labelledby="archives">
                <h2 id="archives" className={styles.heading}>{say('archive.title')}</h2>
                <OpenArchive />
              </section>
              <section aria-labelledby="other-devices">
                <h2 id="other-devices" className={styles.heading}>{say('devices.title')}</h2>
                <p className={styles.quiet}>{say('devices.lead')}</p>
                <ButtonLink className={styles.more} label={say('devices.home-link')} href="/devices" iconAfter="arrowRight" />
              </section>
            </>
          )}
          <section aria-labelledby="how">
            <h2 id="how" className={styles.heading}>{say('home.how')}</h2>
            <ol className={styles.steps}>
              {steps.map((step, index) => (
                <li key={step} className={styles.step}>
                  <span className={styles.number} aria-hidden="true">{index + 1}</span>
                  <p><strong>{say(`shell.${step}`)}</strong> {say(`home.how.${step}`)}</p>
                </li>
              ))}
            </ol>
            <ButtonLink className={styles.more} label={say('help.title')} href="/help" iconAfter="arrowRight" />
          </section>
        </div>
        <div className={styles.cautions}>
          <Caution title={say('caution.title')} kinds={['planning-aid', 'banks', 'bridges', 'back-up-prime']} />
        </div>
      </div>
    </Shell>
  )
}
