import {
  demandFromLines,
  type LineInUse,
  type NozzleEntry,
  newNozzle,
  nozzleCatalogue,
  nozzleRatedGpm,
} from '@plugside/fireground';
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../editing/Choice.tsx';
import { nozzleWords } from '../editing/nozzle-words.ts';
import { QuantityField } from '../editing/QuantityField.tsx';
import { useUnits } from '../editing/use-units.ts';
import { type Governing, isGoverning } from './governing.ts';

interface Row {
  key: number;
  nozzleId: string;
  count: number;
}

const MOST_LIKE = 20;
const MOST_ROWS = 12;
/** Two attack lines to begin with: what a first engine puts in use. */
const FIRST_ROWS: readonly Row[] = [{ key: 1, nozzleId: 'fog-150-100', count: 2 }];

/** What the crew has in use or means to use, line by line. */
export function LinesInUse({
  governing,
  onChoose,
}: {
  governing: Governing;
  onChoose(chosen: { neededGpm: number; title: string }): void;
}) {
  const units = useUnits();
  const [rows, setRows] = useState(FIRST_ROWS);
  const answer = useMemo(() => {
    const lines = rows.map(({ nozzleId, count }): LineInUse => {
      const { make } = entryOf(nozzleId);
      return { nozzle: make, count, name: nozzleWords(make, units) };
    });
    return demandFromLines(lines, { units: units.system });
  }, [rows, units]);
  const change = (key: number, to: Partial<Row>) =>
    setRows(rows.map((row) => (row.key === key ? { ...row, ...to } : row)));
  const { neededGpm, title } = answer;
  const governs = neededGpm !== null && isGoverning(governing, title, neededGpm);
  return (
    <li className="method" aria-label={title}>
      <div className="method-head">
        <h3>{title}</h3>
        {neededGpm !== null && (
          <>
            <p className="method-figure figures">
              <b>{units.text(neededGpm, 'flow')}</b>
            </p>
            <Button
              className="plain-button"
              isDisabled={governs}
              onPress={() => onChoose({ neededGpm, title: title.toLowerCase() })}
            >
              {governs ? 'Governs' : 'Go by this'}
            </Button>
          </>
        )}
      </div>
      <ul className="lines-in-use">
        {rows.map(({ key, nozzleId, count }, at) => (
          <li key={key}>
            <QuantityField
              label={`How many, line ${at + 1}`}
              kind="count"
              value={count}
              min={1}
              max={MOST_LIKE}
              onChange={(next) => change(key, { count: next })}
            />
            <span aria-hidden="true">×</span>
            <Choice
              label={`Nozzle, line ${at + 1}`}
              value={nozzleId}
              options={nozzleCatalogue.map(({ id, make, use }) => ({
                value: id,
                text: `${nozzleWords(make, units)}${use === 'master stream' ? ', master stream' : ''}`,
              }))}
              onChange={(next) => change(key, { nozzleId: next })}
            />
            <span className="soft-text figures">
              {units.text(count * ratedGpm(entryOf(nozzleId)), 'flow')}
            </span>
            <Button
              className="quiet-button remove"
              aria-label={`Take away line ${at + 1}`}
              onPress={() => setRows(rows.filter((row) => row.key !== key))}
            >
              ×
            </Button>
          </li>
        ))}
      </ul>
      <Button
        className="quiet-button"
        isDisabled={rows.length >= MOST_ROWS}
        onPress={() => {
          const key = Math.max(0, ...rows.map((row) => row.key)) + 1;
          setRows([...rows, { key, nozzleId: rows.at(-1)?.nozzleId ?? 'fog-150-100', count: 1 }]);
        }}
      >
        Add a line
      </Button>
      <p className="fact-origin">{answer.unanswered?.text ?? answer.source.title}</p>
    </li>
  );
}

function entryOf(id: string): NozzleEntry {
  return nozzleCatalogue.find((one) => one.id === id) ?? nozzleCatalogue[0]!;
}

const ratedGpm = ({ make }: NozzleEntry) => nozzleRatedGpm(newNozzle('tip', make));
