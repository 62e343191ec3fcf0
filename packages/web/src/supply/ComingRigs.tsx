import type { Adjustments, RespondingRig, Situation } from '@plugside/fireground';
import { Checkbox } from 'react-aria-components';
import { useUnits } from '../editing/use-units.ts';
import { MinutesField } from './MinutesField.tsx';

interface ComingRigsProps {
  situation: Situation;
  changes: Adjustments;
  onChange(changes: Adjustments): void;
}

/** The rigs that come, when, and what they carry; any can be left out or come later. */
export function ComingRigs({ situation, changes, onChange }: ComingRigsProps) {
  return (
    <section className="coming" aria-labelledby="coming">
      <h2 className="section-name" id="coming">
        What is coming
      </h2>
      <ul className="coming-rigs">
        {situation.rigs.map((one) => (
          <Coming key={one.rig.id} coming={one} changes={changes} onChange={onChange} />
        ))}
      </ul>
      <p className="fact">
        Arrivals are from the stations along the streets, turnout and travel at published averages:
        change them to what your rigs do.
      </p>
    </section>
  );
}

function Coming({
  coming,
  changes,
  onChange,
}: Omit<ComingRigsProps, 'situation'> & { coming: RespondingRig }) {
  const units = useUnits();
  const { rig, hose, assistValve, kind } = coming;
  const name = rig.name ?? rig.id;
  const away = changes.away.includes(rig.id);
  const arrivesMin = changes.arrivesMin[rig.id] ?? coming.arrivesMin;
  const carries = [
    ...(kind === 'engine' ? [] : [kind]),
    units.text(rig.ratedGpm, 'flow'),
    ...hose.map((load) => `${units.text(load.lengthFt, 'length')} of ${units.hose(load.hose)}`),
    ...(rig.tankGal ? [`${units.text(rig.tankGal, 'volume')} tank`] : []),
    ...(assistValve ? ['assist valve'] : []),
  ];
  return (
    <li data-away={away || undefined}>
      <Checkbox
        className="check"
        isSelected={!away}
        onChange={(comes) =>
          onChange({
            ...changes,
            away: comes ? changes.away.filter((id) => id !== rig.id) : [...changes.away, rig.id],
          })
        }
      >
        <span className="check-box" aria-hidden="true" />
        <span className="row-text">
          <span className="row-name">{name}</span>
          <span className="row-told">{carries.join(' · ')}</span>
        </span>
      </Checkbox>
      <MinutesField
        label={`${name} arrives after, minutes`}
        value={arrivesMin}
        isDisabled={away}
        onChange={(minutes) =>
          onChange({ ...changes, arrivesMin: { ...changes.arrivesMin, [rig.id]: minutes } })
        }
      />
    </li>
  );
}
