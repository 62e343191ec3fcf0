import type { SupplyWay } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import type { SupplyService } from './supply-service.ts';
import { useMishaps } from './use-supply.ts';

interface MishapTableProps {
  way: SupplyWay;
  demandGpm: number;
  service: SupplyService | null;
}

/** What is left when something goes wrong, with the pumps as they stand and set anew. */
export function MishapTable({ way, demandGpm, service }: MishapTableProps) {
  const units = useUnits();
  const { value: mishaps, problem } = useMishaps(service, way, demandGpm);
  const unit = units.of(1, 'flow').unit;
  return (
    <section aria-labelledby="mishaps" className="mishaps">
      <h3 className="section-name" id="mishaps">
        What can go wrong
      </h3>
      {problem && <p className="tone-warning">Could not be worked out. {problem}</p>}
      {!mishaps && !problem && <p role="status">Working it out…</p>}
      {mishaps && (
        <table className="way-table mishap-table">
          <thead>
            <tr>
              <th scope="col">If</th>
              <th scope="col" className="number">
                As set, {unit}
              </th>
              <th scope="col" className="number">
                Set anew, {unit}
              </th>
              <th scope="col">Then</th>
            </tr>
          </thead>
          <tbody>
            {mishaps.map(({ what, flowGpm, resetGpm, stillMeets, shortfallGpm, text }) => (
              <tr key={what} data-short={!stillMeets || undefined}>
                <th scope="row">{what}</th>
                <td className="number" data-label={`As set, ${unit}`}>
                  {units.number(flowGpm, 'flow')}
                </td>
                <td className="number" data-label={`Set anew, ${unit}`}>
                  <b className={stillMeets ? undefined : 'tone-warning'}>
                    {units.number(resetGpm, 'flow')}
                  </b>
                  {!stillMeets && (
                    <span className="way-spare tone-warning">
                      {units.number(shortfallGpm, 'flow')} short
                    </span>
                  )}
                </td>
                <td data-label="Then">{text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
