import {
  nameOf,
  type Plan,
  type ProfilePath,
  type ProfileStation,
  pieceOf,
  profileOf,
} from '@plugside/fireground';
import { memo, useMemo, useState } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import type { Answered } from '../../plan-store/ask.ts';

const WORDS: Record<ProfileStation['kind'], string> = {
  main: 'main',
  outlet: 'outlet',
  appliance: 'port',
  intake: 'intake',
  discharge: 'discharge',
  nozzle: 'nozzle',
  water: 'water',
  terrain: 'ground',
};

function stationName(plan: Plan, station: ProfileStation): string {
  if (station.kind === 'terrain') return 'Bend of the ground';
  const piece = pieceOf(plan, station.piece);
  const name = piece ? nameOf(piece) : station.piece;
  const port =
    station.port && station.kind === 'appliance'
      ? station.port.replace('-', ' ')
      : WORDS[station.kind];
  return `${name}, ${port}`;
}

/** The drawings as a table: every pressure, in the order that water takes. */
export const StationTable = memo(function StationTable({ answered }: { answered: Answered }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="stations" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The drawings as a table</summary>
      {open && <Stations answered={answered} />}
    </details>
  );
});

function Stations({ answered }: { answered: Answered }) {
  const units = useUnits();
  const profile = useMemo(() => profileOf(answered.plan, answered.state), [answered]);
  const paths = [...profile.supply, ...profile.attack];
  return (
    <div className="table-room">
      <table>
        <caption className="hidden-text">Pressures along each path of the plan</caption>
        <thead>
          <tr>
            <th scope="col">Station</th>
            <th scope="col">Hose so far, {units.of(1, 'length').unit}</th>
            <th scope="col">Height, {units.of(1, 'length').unit}</th>
            <th scope="col">Pressure, {units.of(1, 'pressure').unit}</th>
          </tr>
        </thead>
        {paths.map((path) => (
          <PathRows key={path.id} plan={answered.plan} path={path} />
        ))}
      </table>
    </div>
  );
}

function PathRows({ plan, path }: { plan: Plan; path: ProfilePath }) {
  const units = useUnits();
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={4}>
          {path.label}, {units.text(path.flowGpm, 'flow')}
        </th>
      </tr>
      {path.stations.map((station, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: stations keep their order along the path
        <tr key={i}>
          <th scope="row">{stationName(plan, station)}</th>
          <td>{units.number(station.alongFt, 'length')}</td>
          <td>{units.number(station.elevationFt, 'length')}</td>
          <td>{units.number(station.psi, 'pressure')}</td>
        </tr>
      ))}
    </tbody>
  );
}
