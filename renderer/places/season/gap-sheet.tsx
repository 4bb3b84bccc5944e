import { addDays, dateOfDay, dayNumber, type IsoDate } from '../../../planner/calendar.ts';
import { stayOf } from '../../../planner/season/check-plan.ts';
import { gapsOf } from '../../../planner/season/occupancy.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import type { PlantingStart } from './add-planting.tsx';
import type { BoardData } from './board-data.ts';

const LEAST_DAYS = 21;
const SHOWN = 12;

/** The gaps of a bed, and what would fit into one: by what is still wanted, then by how well it fills the gap. */
export function GapSheet(props: {
  readonly bed: BoardData['beds'][number];
  readonly data: BoardData;
  /** The day that was pointed at; null for the longest gap. */
  readonly day: IsoDate | null;
  readonly onPlant: (start: PlantingStart) => void;
  readonly onClose: () => void;
}) {
  const { bed, data } = props;
  const reader = useReader();
  const stays = data.plantings.flatMap((planting) =>
    planting.spans.filter((span) => span.bedId === bed.id).map((span) => stayOf(planting, bed.id, span.fromShare, span.toShare)),
  );
  const span = { bedId: bed.id, fromShare: 0, toShare: 1 };
  const period = { from_day: dayNumber(data.rules.start), to_day: dayNumber(addDays(data.rules.end, 90)) };
  const gaps = gapsOf(stays, span, period, LEAST_DAYS);
  const at = props.day === null ? null : dayNumber(props.day);
  const gap =
    (at === null ? undefined : gaps.find((each) => each.from_day <= at && at < each.to_day)) ??
    [...gaps].sort((a, b) => b.to_day - b.from_day - (a.to_day - a.from_day))[0];
  const years = Object.entries(bed.lastYearOf).sort(([, a], [, b]) => b - a);
  return (
    <Sheet title={`Bed ${bed.code}`} onClose={props.onClose}>
      <dl className="facts">
        <dt>Area</dt>
        <dd>{reader.print(bed.area_m2, 'm2')}</dd>
        <dt>Soil</dt>
        <dd>{reader.print(bed.soilDepth_m, 'm_short')}</dd>
        <dt>Sun</dt>
        <dd>{bed.sun === 'full' ? 'full' : bed.sun === 'shade' ? 'shade' : 'light shade'}</dd>
        <dt>Support</dt>
        <dd>{bed.hasTrellis ? 'yes' : 'none'}</dd>
        <dt>Stood here</dt>
        <dd>{years.length === 0 ? 'nothing on record' : years.map(([family, year]) => `${family} ${year}`).join(', ')}</dd>
      </dl>
      {gap === undefined ? (
        <p>This bed has no gap of three weeks or more.</p>
      ) : (
        <>
          <h3>
            Free {reader.date(dateOfDay(gap.from_day))} to {reader.date(dateOfDay(gap.to_day))}
          </h3>
          <Fitting {...props} from={dateOfDay(gap.from_day)} to={dateOfDay(gap.to_day)} />
        </>
      )}
    </Sheet>
  );
}

function Fitting(props: {
  readonly bed: BoardData['beds'][number];
  readonly data: BoardData;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly onPlant: (start: PlantingStart) => void;
}) {
  const reader = useReader();
  const fits = useRead(api.plantings.whatFits, {
    seasonId: props.data.season.id,
    bedId: props.bed.id,
    fromShare: 0,
    toShare: 1,
    from: props.from,
    to: props.to,
  });
  return (
    <Shown reading={fits}>
      {(answer) => (
        <div>
          <h4>What would fit</h4>
          {answer.suggestions.length === 0 ? <p>Nothing fits that rotation, depth, sun and time allow.</p> : null}
          {answer.suggestions.slice(0, SHOWN).map((each) => (
            <div key={each.cropId} className="suggestion">
              <div className="row">
                <strong>{each.cropName}</strong>
                {each.stillWanted > 0 ? (
                  <span className="state-mark" data-tone="note">
                    still wanted
                  </span>
                ) : null}
                <Button
                  onClick={() =>
                    props.onPlant({ cropId: each.cropId, method: each.method, inBed: each.inBed, bedIds: [props.bed.id] })
                  }
                >
                  Plant
                </Button>
              </div>
              <span className="small soft">
                in the bed {reader.date(each.inBed)}, harvest {reader.date(each.firstHarvest)} to {reader.date(each.lastHarvest)}
              </span>
              {each.risks.map((risk) => (
                <span key={risk} className="small">
                  {risk}
                </span>
              ))}
            </div>
          ))}
          <p className="small soft">
            {answer.suggestions.length > SHOWN ? `${answer.suggestions.length - SHOWN} more fit. ` : ''}
            {answer.notKnown === 0 ? '' : `${answer.notKnown} crops are left out: their days are not known.`}
          </p>
        </div>
      )}
    </Shown>
  );
}
