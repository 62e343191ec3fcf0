import { sceneFromPlan, withLinesAtScene } from '@plugside/drill';
import {
  asTheyCome,
  type Choice as Chosen,
  clock,
  type Plan,
  rankingOf,
  type Situation,
  type SupplyWay,
} from '@plugside/fireground';
import { useEffect, useMemo, useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import { type SituationAnswer, situationAt } from '../../api/situation.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { useUnits } from '../../editing/use-units.ts';
import { Findings } from '../../field-tests/Findings.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { RecordPicker } from '../../records/form/RecordPicker.tsx';
import { supplyAddress } from '../../supply/address.ts';
import { useChoice, useSupplyService } from '../../supply/use-supply.ts';
import type { DrillSource } from './new-room.ts';
import { SourceNotRead } from './SourceNotRead.tsx';

type ForBuilding = Extract<DrillSource, { from: 'building' }>;

interface BuildingSourceProps {
  source: ForBuilding;
  onChange(source: ForBuilding): void;
}

/** Ways offered at first, and once more are asked for. */
const FIRST = 3;
const MORE = 12;

/** A building of the records, and one of the ways to supply it, as the supply screen chooses them. */
export function BuildingSource({ source, onChange }: BuildingSourceProps) {
  const { buildingId } = source;
  return (
    <div className="room-under">
      {buildingId === '' ? (
        <RecordPicker
          kind="buildings"
          label="Building, by its name or address"
          onPick={(id) => onChange({ ...source, buildingId: id, way: null })}
        />
      ) : (
        <Picked key={buildingId} source={source} onChange={onChange} />
      )}
    </div>
  );
}

function Picked({ source, onChange }: BuildingSourceProps) {
  const { buildingId } = source;
  const [loaded, retry] = useLoaded(`situation:${buildingId}:`, (signal) =>
    situationAt(buildingId, undefined, signal),
  );
  const another = (
    <Button
      className="plain-button"
      onPress={() => onChange({ ...source, buildingId: '', way: null })}
    >
      Another building
    </Button>
  );
  if (loaded.state === 'loading') return <p role="status">Gathering what there is to work with…</p>;
  if (loaded.state !== 'ready')
    return <SourceNotRead what="The building" onRetry={retry} another={another} />;
  const { building, situation, notices } = loaded.value;
  return (
    <div className="source-picked">
      <div className="source-head">
        <p className="source-name">
          {building.name}{' '}
          {building.address && building.address !== building.name && (
            <span className="soft-text">{building.address}</span>
          )}
        </p>
        {another}
      </div>
      {situation ? (
        <Ways answer={loaded.value} situation={situation} source={source} onChange={onChange} />
      ) : (
        <NoWays answer={loaded.value} />
      )}
      <Findings findings={notices} />
    </div>
  );
}

function NoWays({ answer: { building } }: { answer: SituationAnswer }) {
  return (
    <>
      <p className="tone-warning">
        {building.neededGpm === undefined
          ? 'What it needs is not on record, so there are no ways to choose among. Enter it, or work it out where its supply is chosen.'
          : 'There is no way to drill: see what is missing.'}
      </p>
      <PlaceLink className="plain-link" href={supplyAddress(building.id)}>
        Its supply
      </PlaceLink>
    </>
  );
}

interface WaysProps extends BuildingSourceProps {
  answer: SituationAnswer;
  situation: Situation;
}

const ranking = rankingOf(asTheyCome);

function Ways({ answer, situation, source, onChange }: WaysProps) {
  const service = useSupplyService();
  const { value: choice, problem } = useChoice(service, situation, ranking);
  if (problem) {
    return (
      <p className="tone-warning" role="alert">
        The ways could not be worked out. {problem}
      </p>
    );
  }
  if (!choice) return <p role="status">Working out the ways…</p>;
  return <WayRadios answer={answer} choice={choice} source={source} onChange={onChange} />;
}

interface WayRadiosProps extends BuildingSourceProps {
  answer: SituationAnswer;
  choice: Chosen;
}

function WayRadios({ answer, choice, source, onChange }: WayRadiosProps) {
  const units = useUnits();
  const [all, setAll] = useState(false);
  const { drilled, left } = useMemo(() => sorted(choice.ways), [choice]);
  const [first] = drilled;
  const pick = (way: DrilledWay) =>
    onChange({
      ...source,
      way: {
        id: way.id,
        plan: way.plan,
        title: `${answer.building.name}: ${way.title}`.slice(0, 120),
      },
    });
  // The first in rank until another is picked.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each choice
  useEffect(() => {
    if (source.way === null && first) pick(first);
  }, [first, source.way]);
  if (!first) {
    return (
      <p className="tone-warning">
        {left[0] ?? choice.why} Pick another building, or choose its supply first.
      </p>
    );
  }
  const shown = drilled.slice(0, all ? MORE : FIRST);
  return (
    <>
      <RadioGroup
        className="room-radios"
        value={source.way?.id ?? ''}
        onChange={(id) => pick(drilled.find((one) => one.id === id)!)}
      >
        <Label>Way to supply it, the first in rank first</Label>
        {shown.map(({ id, title, mostGpm, meetsDemand, time }) => (
          <Radio key={id} value={id} className="room-radio">
            <i className="room-ring" aria-hidden="true" />
            <span>
              <b>{title}</b>{' '}
              <span className="soft-text figures">
                {units.text(mostGpm, 'flow')}
                {!meetsDemand && ', too little'}; first water at {clock(time.waterAtMin)} min
              </span>
            </span>
          </Radio>
        ))}
      </RadioGroup>
      {drilled.length > shown.length && !all && (
        <Button className="plain-button" onPress={() => setAll(true)}>
          More ways
        </Button>
      )}
    </>
  );
}

type DrilledWay = SupplyWay & { plan: Plan };

/** The ways that a drill can be made from, in their order, and why the others are left out. */
function sorted(ways: readonly SupplyWay[]): { drilled: DrilledWay[]; left: string[] } {
  const drilled: DrilledWay[] = [];
  const left: string[] = [];
  for (const way of ways) {
    const { plan, title } = way;
    if (!plan) {
      left.push(`${title}: no lay is drilled in it, tenders bring the water.`);
      continue;
    }
    try {
      sceneFromPlan(withLinesAtScene(plan), { start: 'hose connected' });
      drilled.push({ ...way, plan });
    } catch (error) {
      left.push(`${title}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  return { drilled, left };
}
