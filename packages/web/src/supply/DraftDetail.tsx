import type { DraftPart, Given } from '@plugside/fireground';
import type { ReactNode } from 'react';
import { originWords } from '../district/list/Facts.tsx';
import { useUnits } from '../editing/use-units.ts';

/** What a pump can do at the open water of a way, under which conditions, and how long it lasts. */
export function DraftDetail({ part }: { part: DraftPart }) {
  const units = useUnits();
  const { rigName, sourceName, suction, pumpMostGpm, bindingText, usableGal, lastsMin } = part;
  const given = ({ value, origin }: Given, kind: 'length' | 'temperature') => (
    <>
      <b className="figures">{units.text(value, kind)}</b>{' '}
      <span className="soft-text">{originWords(origin)}</span>
    </>
  );
  return (
    <section aria-label={`${rigName} at draft`} className="draft-part">
      <h3 className="section-name">
        {rigName} at draft at {sourceName}
      </h3>
      <p>
        Up to <b className="figures">{units.text(pumpMostGpm, 'flow')}</b> there at{' '}
        {units.text(part.dischargePsi, 'pressure')}. {bindingText}
      </p>
      <dl className="part-facts">
        <Fact name="Lift">{given(part.liftFt, 'length')}</Fact>
        <Fact name="Altitude">{given(part.altitudeFt, 'length')}</Fact>
        <Fact name="Water">{given(part.waterTempF, 'temperature')}</Fact>
        <Fact name="Suction hose">
          <b className="figures">
            {suction.count > 1 && `${suction.count} × `}
            {units.text(suction.lengthFt, 'length')} of {units.hose(suction.hose)}
          </b>{' '}
          <span className="soft-text">{originWords(suction.origin)}</span>
        </Fact>
        <Fact name="Vacuum at the intake">
          <b className="figures">{units.text(part.vacuumInHg, 'vacuum')}</b>{' '}
          <span className="soft-text">
            of {units.text(part.vacuumLimitInHg, 'vacuum')} to count on
          </span>
        </Fact>
        {part.ruleGpm !== null && (
          <Fact name="By the published share at this lift">
            <b className="figures">{units.text(part.ruleGpm, 'flow')}</b>
          </Fact>
        )}
        {usableGal !== undefined && lastsMin !== undefined && (
          <Fact name="The water lasts">
            <b className="figures">{Math.floor(lastsMin)} min</b>{' '}
            <span className="soft-text">
              of {units.text(usableGal, 'volume')} that can be drawn
            </span>
          </Fact>
        )}
        {part.access && <Fact name="Access">{part.access}</Fact>}
      </dl>
    </section>
  );
}

/** One line of what a part of a way rests on. */
export function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
