import { apiUrl } from '../../api/request.ts';
import { shownKinds } from '../fields/field-tables.ts';
import { kindName } from '../words.ts';

/** Everything to take along: a backup, and files for other programs. */
export function Downloads() {
  return (
    <section aria-labelledby="downloads-title" className="downloads">
      <h3 id="downloads-title">Take along</h3>
      <dl>
        <div>
          <dt>
            <a className="text-link" href={apiUrl('/backup')} download>
              Backup
            </a>
          </dt>
          <dd>
            Everything in one archive with checksums. <code>plugside records restore</code> brings
            it back, also onto another database.
          </dd>
        </div>
        <div>
          <dt>
            <a className="text-link" href={apiUrl('/export.zip')} download>
              All as tables
            </a>
          </dt>
          <dd>Every kind as CSV, and as GeoJSON where it has a place, in one archive.</dd>
        </div>
      </dl>
      <details className="by-kind">
        <summary>One kind alone</summary>
        <ul>
          {shownKinds.map((kind) => (
            <li key={kind}>
              <span>{kindName(kind)}</span>
              <a className="text-link" href={apiUrl(`/export/${kind}.csv`)} download>
                CSV<span className="hidden-text"> of {kindName(kind)}</span>
              </a>
              <a className="text-link" href={apiUrl(`/export/${kind}.geojson`)} download>
                GeoJSON<span className="hidden-text"> of {kindName(kind)}</span>
              </a>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
