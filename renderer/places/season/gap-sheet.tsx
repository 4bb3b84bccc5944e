import { addDays, dateOfDay, dayNumber, type IsoDate } from '../../../planner/calendar.ts';
import { stayOf } from '../../../planner/season/check-plan.ts';
import { gapsOf } from '../../../planner/season/occupancy.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
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
    <Sheet title={say('Bed {bed}', { bed: bed.code })} onClose={props.onClose}>
      <dl className="facts">
        <dt>{say('Area')}</dt>
        <dd>{reader.print(bed.area_m2, 'm2')}</dd>
        <dt>{say('Soil')}</dt>
        <dd>{reader.print(bed.soilDepth_m, 'm_short')}</dd>
        <dt>{say('Sun')}</dt>
        <dd>{bed.sun === 'full' ? say('full') : bed.sun === 'shade' ? say('shade') : say('light shade')}</dd>
        <dt>{say('Support')}</dt>
        <dd>{bed.hasTrellis ? say('yes') : say('none')}</dd>
        <dt>{say('Stood here')}</dt>
        <dd>{years.length === 0 ? say('nothing on record') : years.map(([family, year]) => `${family} ${year}`).join(', ')}</dd>
      </dl>
      {gap === undefined ? (
        <p>{say('This bed has no gap of three weeks or more.')}</p>
      ) : (
        <>
          <h3>
            {say('Free {dateOfDay} to {dateOfDay2}', {
              dateOfDay: reader.date(dateOfDay(gap.from_day)),
              dateOfDay2: reader.date(dateOfDay(gap.to_day)),
            })}
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
          <h4>{say('What would fit')}</h4>
          {answer.suggestions.length === 0 ? <p>{say('Nothing fits that rotation, depth, sun and time allow.')}</p> : null}
          {answer.suggestions.slice(0, SHOWN).map((each) => (
            <div key={each.cropId} className="suggestion">
              <div className="row">
                <strong>{each.cropName}</strong>
                {each.stillWanted > 0 ? (
                  <span className="state-mark" data-tone="note">
                    {say('still wanted')}
                  </span>
                ) : null}
                <Button
                  onClick={() =>
                    props.onPlant({ cropId: each.cropId, method: each.method, inBed: each.inBed, bedIds: [props.bed.id] })
                  }
                >
                  {say('Plant')}
                </Button>
              </div>
              <span className="small soft">
                {say('in the bed {inBed}, harvest {firstHarvest} to {lastHarvest}', {
                  inBed: reader.date(each.inBed),
                  firstHarvest: reader.date(each.firstHarvest),
                  lastHarvest: reader.date(each.lastHarvest),
                })}
              </span>
              {each.risks.map((risk) => (
                <span key={risk} className="small">
                  {risk}
                </span>
              ))}
            </div>
          ))}
          <p className="small soft">
            {answer.suggestions.length > SHOWN
              ? say('{suggestions} more fit. ', { suggestions: answer.suggestions.length - SHOWN })
              : ''}
            {answer.notKnown === 0
              ? ''
              : say('{notKnown} crops are left out: their days are not known.', { notKnown: answer.notKnown })}
          </p>
        </div>
      )}
    </Shown>
  );
}
