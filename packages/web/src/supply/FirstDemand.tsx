import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import { DEMAND } from '../editing/ranges.ts';
import { MeasureField } from '../field-tests/MeasureField.tsx';

/** The flow of a building whose record has none: empty until somebody enters it. */
export function FirstDemand({ onGiven }: { onGiven(gpm: number): void }) {
  const [gpm, setGpm] = useState<number | undefined>(undefined);
  const give = (event: FormEvent) => {
    event.preventDefault();
    if (gpm !== undefined) onGiven(gpm);
  };
  return (
    <form className="first-demand" onSubmit={give}>
      <MeasureField
        label="Needed fire flow"
        kind="flow"
        value={gpm}
        {...DEMAND}
        onChange={setGpm}
      />
      <Button type="submit" className="plain-button main-button">
        Work out the ways
      </Button>
    </form>
  );
}
