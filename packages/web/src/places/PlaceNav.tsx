import { PlaceLink } from './PlaceLink.tsx';
import { placeAt, places, usePathname } from './place.ts';

/** The row of places, the current one marked and told. */
export function PlaceNav() {
  const name = placeAt(usePathname());
  const here = places.find((one) => one.name === name)?.under ?? name;
  return (
    <nav className="places" aria-label="Places">
      <ul>
        {places
          .filter(({ under }) => under === undefined)
          .map(({ name, path, text }) => (
            <li key={name}>
              <PlaceLink
                href={path}
                className="place-link"
                aria-current={name === here ? 'page' : undefined}
              >
                {text}
              </PlaceLink>
            </li>
          ))}
      </ul>
    </nav>
  );
}
