import { type Kind, kindLabels } from '@plugside/records/model';
import type { Referrer } from '../../api/problem.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { recordPath } from '../address.ts';
import type { Values } from '../form/draft.ts';
import { recordsWhere } from '../lookups.ts';
import { countWords, recordTitle } from '../words.ts';

/** What refers to a record that was to be removed, each with the way to it. */
export function Referrers({ kind, by }: { kind: Kind; by: readonly Referrer[] }) {
  return (
    <>
      <p>
        This {kindLabels[kind][0]} cannot be removed while others refer to it. Remove those first,
        or have them refer to another.
      </p>
      {by.map((one) => (
        <section key={`${one.kind}.${one.field}`}>
          <p className="referrer-kind">{countWords(one.kind, one.count)}</p>
          <ReferrerLinks of={one} />
        </section>
      ))}
    </>
  );
}

function ReferrerLinks({ of }: { of: Referrer }) {
  const units = useUnits();
  const [loaded] = useLoaded(`${of.kind}:${of.ids.join()}`, (signal) =>
    recordsWhere(of.kind, 'id', of.ids, signal),
  );
  const found: readonly Values[] = loaded.state === 'ready' ? loaded.value : [];
  const titles = new Map(found.map((one) => [one.id, recordTitle(of.kind, one, units)]));
  return (
    <ul className="referrers">
      {of.ids.map((id) => (
        <li key={id}>
          <PlaceLink href={recordPath(of.kind, id)}>{titles.get(id) ?? '…'}</PlaceLink>
        </li>
      ))}
      {of.count > of.ids.length && <li>and {of.count - of.ids.length} more</li>}
    </ul>
  );
}
