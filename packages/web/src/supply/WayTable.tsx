import {
  type Adjustments,
  alikeText,
  type Choice,
  clock,
  marginWantedGpm,
  otherMainsText,
  type SupplyWay,
} from '@plugside/fireground';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Switcher } from '../editing/Switcher.tsx';
import { type Units, useUnits } from '../editing/use-units.ts';

interface WayTableProps {
  choice: Choice;
  pickedId: string | null;
  onPick(id: string): void;
  changes: Adjustments;
  onChange(changes: Adjustments): void;
}

const SHOWN = 8;

const CRITERIA: readonly { value: Adjustments['first']; text: string }[] = [
  { value: 'time to water', text: 'Soonest' },
  { value: 'rigs used', text: 'Fewest rigs' },
  { value: 'hose', text: 'Least hose' },
  { value: 'margin', text: 'Most to spare' },
];

/** The ways by rank; those that meet the demand come first. */
export function WayTable({ choice, pickedId, onPick, changes, onChange }: WayTableProps) {
  const units = useUnits();
  const [all, setAll] = useState(false);
  const wantedGpm = marginWantedGpm({ ...changes, demandGpm: choice.demandGpm });
  const shown = all ? choice.ways : choice.ways.slice(0, SHOWN);
  return (
    <div className="way-list">
      <div className="way-order">
        <span className="soft-text" id="way-order">
          Of those that bring enough, first
        </span>
        <Switcher
          label="What counts first"
          value={changes.first}
          options={CRITERIA}
          onChange={(first) => onChange({ ...changes, first })}
        />
      </div>
      <p className="fact">{alikeText(units.system)}</p>
      <table className="way-table">
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col" className="number">
              Brings, {units.of(1, 'flow').unit}
            </th>
            <th scope="col" className="number">
              First water, min
            </th>
            <th scope="col" className="number">
              All of it, min
            </th>
            <th scope="col" className="number">
              Rigs
            </th>
            <th scope="col" className="number">
              Hose, {units.of(1, 'length').unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((way, index) => (
            <WayRow
              key={way.id}
              way={way}
              rank={index + 1}
              picked={way.id === pickedId}
              wantedGpm={wantedGpm}
              units={units}
              onPick={() => onPick(way.id)}
            />
          ))}
        </tbody>
      </table>
      {choice.ways.length > SHOWN && (
        <Button className="plain-button" onPress={() => setAll(!all)}>
          {all ? 'Show the first few' : `Show all ${choice.ways.length} ways`}
        </Button>
      )}
    </div>
  );
}

/** What it would bring were its hydrants' mains otherwise than they are counted, where that matters. */
function OtherMains({ mains, units }: { mains: SupplyWay['mains']; units: Units }) {
  const text = otherMainsText(mains, units.system);
  if (!text) return null;
  const counted = mains?.basis === 'shared';
  return <span className={counted ? 'way-spare' : 'way-spare tone-warning'}>{text}</span>;
}

interface WayRowProps {
  way: SupplyWay;
  rank: number;
  picked: boolean;
  /** To spare [gpm]. */
  wantedGpm: number;
  units: Units;
  onPick(): void;
}

function WayRow({ way, rank, picked, wantedGpm, units, onPick }: WayRowProps) {
  const { title, mostGpm, meetsDemand, littleToSpare, shortfallGpm, marginGpm } = way;
  // Little only where its hydrants share a main is told on the line below.
  const only = littleToSpare && marginGpm < wantedGpm ? 'only ' : '';
  return (
    <tr
      data-picked={picked || undefined}
      data-short={!meetsDemand || undefined}
      data-little={littleToSpare || undefined}
      onClick={onPick}
    >
      <th scope="row">
        <Button className="way-pick" aria-pressed={picked} onPress={onPick}>
          <span className="way-rank figures" aria-hidden="true">
            {rank}
          </span>
          <span className="row-text">
            <span className="row-name">{title}</span>
            <span className="row-told">{way.bindingText}</span>
          </span>
        </Button>
      </th>
      <td className="number" data-label={`Brings, ${units.of(1, 'flow').unit}`}>
        <span>
          <b>{units.number(mostGpm, 'flow')}</b>
          <span className={meetsDemand ? 'way-spare' : 'way-spare tone-warning'}>
            {meetsDemand
              ? `${only}${units.number(marginGpm, 'flow')} to spare`
              : `${units.number(shortfallGpm, 'flow')} short`}
          </span>
          <OtherMains mains={way.mains} units={units} />
        </span>
      </td>
      <td className="number" data-label="First water, min">
        {clock(way.time.waterAtMin)}
      </td>
      <td className="number" data-label="All of it, min">
        {clock(way.time.fullAtMin)}
      </td>
      <td className="number" data-label="Rigs">
        {way.rigsUsed}
      </td>
      <td className="number" data-label={`Hose, ${units.of(1, 'length').unit}`}>
        {units.number(way.hoseFt, 'length')}
      </td>
    </tr>
  );
}
