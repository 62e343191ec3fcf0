import type { Kind } from '@plugside/records/model';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { kindPath, recordPath } from './address.ts';
import { kindName } from './words.ts';

interface CrumbsProps {
  kind: Kind;
  /** The record that this page belongs to. */
  record?: { id: string; title: string };
}

/** The way back, from the kind down. */
export function Crumbs({ kind, record }: CrumbsProps) {
  return (
    <nav className="crumbs" aria-label="Way back">
      <ul>
        <li>
          <PlaceLink href={kindPath(kind)}>‹ {kindName(kind)}</PlaceLink>
        </li>
        {record && (
          <li>
            <PlaceLink href={recordPath(kind, record.id)}>‹ {record.title}</PlaceLink>
          </li>
        )}
      </ul>
    </nav>
  );
}
