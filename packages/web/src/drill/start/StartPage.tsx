import { type Evolution, evolutions } from '@plugside/drill';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { drillAddress } from '../address.ts';
import { JoinOrStart } from '../together/JoinOrStart.tsx';

/** The evolutions to drill, in the order they are best learned. */
export function StartPage() {
  return (
    <>
      <p className="drill-lead">
        Pump operators learn by doing. Couple the hose, turn the valves, set the pressure: the
        gauges answer as the water would.
      </p>
      <JoinOrStart />
      <section aria-labelledby="evolutions">
        <h2 className="section-name" id="evolutions">
          Evolutions, in the order they are best learned
        </h2>
        <ol className="evolution-list">
          {evolutions.map((evolution) => (
            <EvolutionRow key={evolution.key} evolution={evolution} />
          ))}
        </ol>
      </section>
      <p className="deferral">{evolutions[0]?.cautions.at(-1)}</p>
    </>
  );
}

function EvolutionRow({ evolution }: { evolution: Evolution }) {
  const { key, title, teaches } = evolution;
  return (
    <li className="evolution-row">
      <div>
        <h3>{title}</h3>
        <p className="soft-text">{teaches}</p>
      </div>
      <p className="evolution-ways">
        <PlaceLink
          className="plain-link main-link"
          href={drillAddress('learn', key)}
          aria-label={`Learn: ${title}`}
        >
          Learn
        </PlaceLink>
        <PlaceLink
          className="plain-link"
          href={drillAddress('sandbox', key)}
          aria-label={`Sandbox: ${title}`}
        >
          Sandbox
        </PlaceLink>
      </p>
    </li>
  );
}
