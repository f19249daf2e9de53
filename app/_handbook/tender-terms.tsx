import type { HandbookComparison, TenderComparison } from '@/lib/supply'
import { formatGiven, formatQuantity, formatTime, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/handbook'
import { Card } from '../_ui/card'
import { DataTable, type Column } from '../_ui/data-table'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './handbook.module.css'
import { WhyTheyDiffer } from './why-they-differ'

/** Each tender's round by the forms and as simulated, with why they differ. */
export function TenderTerms({ comparison, names }: { comparison: HandbookComparison; names: NameOf }) {
  const [system] = useUnitSystem()
  const flow = (gpm: number) => formatGiven(gpm, system)
  return (
    <section className={styles.part} aria-label={say('handbook.tenders')}>
      <h3 className={styles.subtitle}>{say('handbook.tenders')}</h3>
      {comparison.tenders.map((tender, index) => {
        const name = names(tender.id) ?? tender.id
        const annex = flow(tender.annex.flow_gpm)
        const summary = tender.simulated ? say('handbook.tender.summary', { annex, simulated: flow(tender.simulated.flow_gpm) }) : say('handbook.tender.out', { annex })
        return (
          <Card key={tender.id} title={name} summary={summary} startsOpen={index === 0} level={4}>
            <p className={styles.small}>{say('handbook.tender.way', { toFill: formatQuantity(tender.toFill_mi, 'mi', system), toDump: formatQuantity(tender.toDump_mi, 'mi', system) })}</p>
            <DataTable caption={name} isCaptionHidden columns={columns} rows={rowsOf(tender, system)} rowKey={({ term }) => term} />
            <WhyTheyDiffer tender={tender} />
          </Card>
        )
      })}
    </section>
  )
}

type Row = { term: string; rating: string; annex: string; own: string; simulated: string }

const columns: readonly Column<Row>[] = [
  { key: 'term', head: say('handbook.term'), cell: ({ term }) => term },
  { key: 'rating', head: say('handbook.column.rating'), isNumber: true, cell: ({ rating }) => rating },
  { key: 'annex', head: say('handbook.column.annex'), isNumber: true, cell: ({ annex }) => annex },
  { key: 'own', head: say('handbook.column.own'), isNumber: true, cell: ({ own }) => own },
  { key: 'simulated', head: say('handbook.column.simulated'), isNumber: true, cell: ({ simulated }) => simulated },
]

function rowsOf({ rating, annex, own, simulated: round }: TenderComparison, system: UnitSystem): Row[] {
  const none = say('handbook.none')
  const forms = [rating, annex, own]
  const row = (term: string, of: (form: typeof rating) => string, simulated: string | undefined): Row => {
    const [first = none, second = none, third = none] = forms.map(of)
    return { term, rating: first, annex: second, own: third, simulated: simulated ?? none }
  }
  const nothing = () => none
  return [
    row(say('handbook.term.counted'), ({ counted_gal }) => formatQuantity(counted_gal, 'gal', system), round && formatQuantity(round.counted_gal, 'gal', system)),
    row(say('handbook.term.dumpSite'), ({ dumpSite_s }) => formatTime(dumpSite_s), round && formatTime(round.dumpHandling_s + round.dump_s)),
    row(say('handbook.term.toFill'), ({ toFill_s }) => formatTime(toFill_s), round && formatTime(round.toFill_s)),
    row(say('handbook.term.fillSite'), ({ fillSite_s }) => formatTime(fillSite_s), round && formatTime(round.fillHandling_s + round.fill_s)),
    row(say('handbook.term.toDump'), ({ toDump_s }) => formatTime(toDump_s), round && formatTime(round.toDump_s)),
    row(say('handbook.term.waiting'), nothing, round && formatTime(round.waitToFill_s + round.waitToDump_s + round.waitAtRoad_s)),
    ...(round && round.rest_s + round.away_s >= 1 ? [row(say('handbook.term.rest'), nothing, formatTime(round.rest_s + round.away_s))] : []),
    row(say('handbook.term.round'), ({ round_s }) => formatTime(round_s), round && formatTime(round.round_s)),
    row(say('handbook.term.flow'), ({ flow_gpm }) => formatGiven(flow_gpm, system), round && formatGiven(round.flow_gpm, system)),
  ]
}
