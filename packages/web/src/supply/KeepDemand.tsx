import type { Stored } from '@plugside/records/model';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { changeRecord, StaleError } from '../api/index.ts';
import { todayIso } from '../district/words.ts';

interface KeepDemandProps {
  building: Stored<'buildings'>;
  neededGpm: number;
  /** The method that says it; null where it was entered. */
  method: string | null;
  /** Back to the record's; null where it has none. */
  onBack: (() => void) | null;
}

type Keeping =
  | { state: 'no' }
  | { state: 'keeping' }
  | { state: 'kept'; gpm: number }
  | { state: 'failed'; reason: string };

/** Writes the flow into the building's record, with where it comes from. */
export function KeepDemand({ building, neededGpm, method, onBack }: KeepDemandProps) {
  const [version, setVersion] = useState(building.version);
  const [keeping, setKeeping] = useState<Keeping>({ state: 'no' });
  const keep = async () => {
    setKeeping({ state: 'keeping' });
    try {
      const saved = await changeRecord('buildings', building.id, version, {
        neededGpm,
        origins: {
          ...building.origins,
          neededGpm: method
            ? { kind: 'estimated', text: method, date: todayIso() }
            : { kind: 'department', text: 'Entered while choosing a supply', date: todayIso() },
        },
      });
      setVersion(saved.version);
      setKeeping({ state: 'kept', gpm: neededGpm });
    } catch (error) {
      const reason =
        error instanceof StaleError
          ? 'Somebody changed this building meanwhile: open it again, then keep the flow.'
          : error instanceof Error
            ? error.message
            : String(error);
      setKeeping({ state: 'failed', reason });
    }
  };
  const kept = keeping.state === 'kept' && keeping.gpm === neededGpm;
  return (
    <div className="keep-demand">
      <Button
        className="plain-button"
        isDisabled={kept || keeping.state === 'keeping'}
        onPress={() => void keep()}
      >
        {kept ? 'Kept in its record' : 'Keep in its record'}
      </Button>
      {onBack && (
        <Button className="quiet-button" onPress={onBack}>
          Back to the record&rsquo;s
        </Button>
      )}
      <span role="status">
        {keeping.state === 'failed' && (
          <span className="tone-warning">Not kept. {keeping.reason}</span>
        )}
      </span>
    </div>
  );
}
