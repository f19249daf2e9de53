'use client'

import type { ReactNode } from 'react'
import { ratedSuction } from '@/lib/hydraulics'
import type { Apparatus, District, DraftingPump, Pumper, Tender } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { ItemCheck, ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { ItemNumber } from '../_fields/item-number'
import { say } from '../_text'
import '../_text/areas/resources'
import { PumpTests } from './pump-tests'
import styles from './resources.module.css'

export function Section({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className={styles.section}>
      <legend className={styles.sectionTitle}>{title}</legend>
      {children}
    </fieldset>
  )
}

/** All that is known of a vehicle, in parts that stand side by side where there is room. */
export function UnitFields({ unit, district }: { unit: Apparatus; district: District }) {
  return (
    <>
      <div className={styles.sections}>
        <Section title={say('resources.part.unit')}>
          <ItemText field="name" isRequired />
          <ItemChoice field="stationId" label={say('resources.station')} none={say('resources.no-station')} choices={district.stations.map(({ id, name }) => ({ value: id as string, label: name }))} />
          <ItemCheck field="mutualAid" />
          <ItemQuantity field="turnout_s" hint={say('resources.turnout.hint')} standIn={district.stations.find(({ id }) => id === unit.stationId)?.turnout_s === undefined ? defaults.turnout_s : { value: district.stations.find(({ id }) => id === unit.stationId)?.turnout_s ?? 0, mark: 'computed', source: say('resources.from-station') }} />
          <ItemCount field="crewCount" />
          <ItemText field="notes" isLong />
        </Section>
        <Section title={say('resources.part.size')}>
          <ItemQuantity field="tank_gal" />
          <ItemQuantity field="full_lb" hint={say('resources.full.hint')} />
          <ItemQuantity field="empty_lb" />
          <ItemQuantity field="height_ft" />
          <ItemQuantity field="width_ft" />
        </Section>
        {unit.kind === 'tender' ? <TenderParts tender={unit} /> : <PumpPart pump={unit} />}
        {unit.kind === 'pumper' && <PumperParts pumper={unit} />}
      </div>
      {unit.kind !== 'tender' && <PumpTests pump={unit} />}
    </>
  )
}

function PumpPart({ pump }: { pump: DraftingPump }) {
  const rated = ratedSuction(pump.rated_gpm ?? 1000)
  return (
    <>
      <Section title={say('resources.part.pump')}>
        <ItemQuantity field="rated_gpm" hint={say('resources.rated.hint')} />
        <ItemQuantity field="ratedLift_ft" standIn={{ value: rated.lift_ft, mark: 'handbook', source: say('resources.rated.source') }} />
        <ItemQuantity field="discharge_psi" standIn={defaults.discharge_psi} />
        <ItemQuantity field="intakeLoss_ft" hint={say('resources.intake.hint')} />
        <ItemCheck field="isOverRated" />
        {pump.kind === 'pumper' && <ItemQuantity field="fuel_s" standIn={defaults.fuel_s} />}
      </Section>
      <Section title={say('resources.part.priming')}>
        <ItemQuantity field="dryVacuum_inHg" />
        <ItemQuantity field="dryVacuumAltitude_ft" />
        <ItemQuantity field="priming_s" />
        <ItemQuantity field="primer_gpm" />
        <ItemQuantity field="pumpTop_ft" />
      </Section>
    </>
  )
}

function PumperParts({ pumper }: { pumper: Pumper }) {
  const { suction } = ratedSuction(pumper.rated_gpm ?? 1000)
  return (
    <>
      <Section title={say('resources.part.tank')}>
        <ItemQuantity field="tankToPump_gpm" />
        <ItemQuantity field="tankToPumpDrop_ft" />
        <ItemQuantity field="tankFill_in" />
        <ItemQuantity field="tankFill_gpm" />
        <ItemQuantity field="tankHeight_ft" />
      </Section>
      <Section title={say('resources.part.hose')}>
        <ItemQuantity field="suction_in" standIn={{ value: suction.size_in, mark: 'handbook', source: say('resources.rated.source') }} />
        <ItemQuantity field="suction_ft" standIn={defaults.suctionLength_ft} />
        <ItemQuantity field="supplyHose_in" />
        <ItemQuantity field="supplyHose_ft" />
      </Section>
    </>
  )
}

function TenderParts({ tender }: { tender: Tender }) {
  return (
    <>
      <Section title={say('resources.part.load')}>
        <ItemNumber field="usableShare" isShare standIn={defaults.usableShare} />
        <ItemQuantity field="dump_gpm" hint={say('resources.dump.hint')} standIn={defaults.tenderDump_gpm} />
        <ItemQuantity field="dumpTail_gpm" standIn={defaults.tenderDumpTail_gpm} />
        <ItemChoice field="dumpBy" none={say('choice.dumpBy.none')} choices={(['gravity', 'jet', 'pump'] as const).map((value) => ({ value, label: say(`choice.dumpBy.${value}`) }))} />
        <ItemQuantity field="dumpRear_gpm" />
        <ItemQuantity field="dumpSide_gpm" />
        <ItemQuantity field="dumpOpening_in" hint={say('plan.hint.dump-opening')} />
        <ItemQuantity field="dumpHead_ft" standIn={defaults.dumpHead_ft} />
        <ItemQuantity field="dumpCap_gpm" />
        <ItemQuantity field="pump_gpm" label={say('resources.tender-pump')} />
      </Section>
      <Section title={say('resources.part.filling')}>
        <ItemQuantity field="fillLimit_gpm" standIn={defaults.tenderFillLimit_gpm} />
        <ItemQuantity field="fillInlet_in" standIn={defaults.fillInlet_in} />
        <ItemQuantity field="fillInletMaximum_psi" standIn={defaults.fillInletMaximum_psi} />
        <ItemCount field="fillInletCount" standIn={1} hint={say('plan.hint.inlets')} />
        <ItemNumber field="topUpShare" isShare standIn={defaults.topUpShare} />
        <ItemNumber field="topUpRateShare" isShare standIn={defaults.topUpRateShare} />
      </Section>
      <Section title={say('resources.part.handling')}>
        <ItemQuantity field="fillPosition_s" standIn={defaults.fillPosition_s} />
        <ItemQuantity field="fillClear_s" standIn={defaults.fillClear_s} />
        <ItemQuantity field="dumpPosition_s" standIn={defaults.dumpPositionBackIn_s} />
        <ItemQuantity field="dumpClear_s" standIn={defaults.dumpClear_s} />
        {tender.dumpPosition_s === undefined && <p className={styles.quiet}>{say('resources.handling.hint')}</p>}
      </Section>
    </>
  )
}
