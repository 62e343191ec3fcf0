import { formatHoseSize, hoseSizes, parseHoseSize } from '../../units/hose-size.ts';
import { showValue } from '../issue.ts';
import { didYouMean } from '../nearest.ts';
import type { HoseSize } from '../plan.ts';
import { bad, field, good, type Reading } from './field.ts';
import { sizeLimits } from './ranges.ts';

/** YAML reads `name: 114` as a number; a name is text whatever it is made of. */
function asText(written: unknown): string | null {
  if (typeof written === 'string') return written;
  if (typeof written === 'number' && Number.isFinite(written)) return String(written);
  return null;
}

// Tab and line feed may stand in a note; other control characters are slips or worse.
const hasControl = (text: string) => /\p{Cc}/u.test(text.replace(/[\n\t]/g, ''));

/** Free text. */
export function textField(description: string, longest: number = sizeLimits.nameLength) {
  const allowed = `text of 1 to ${longest} characters`;
  return field(
    (written): Reading<string> => {
      if (written === undefined) return bad('it is missing', allowed, 'Write it.');
      const text = asText(written);
      if (text === null) {
        return bad(`${showValue(written)} is not text`, allowed, 'Put the text in quotes.');
      }
      if (text.trim() === '') return bad('it is blank', allowed, 'Write it or leave it out.');
      if (text.length > longest) {
        return bad(`it is ${text.length} characters long`, allowed, 'Shorten it.');
      }
      if (hasControl(text)) {
        return bad('it has control characters', allowed, 'Type the text again.');
      }
      return good(text);
    },
    { description, type: ['string', 'number'], minLength: 1, maxLength: longest },
  );
}

const idAllowed = `letters, digits, - and _, up to ${sizeLimits.idLength}`;
const idPattern = /^[\p{L}\p{N}_-]+$/u;

/** A name unique in the plan, used in port references. */
export function idField(description: string) {
  return field(
    (written): Reading<string> => {
      if (written === undefined) return bad('it is missing', idAllowed, 'Give it an id.');
      const text = asText(written);
      if (text === null || !idPattern.test(text) || text.length > sizeLimits.idLength) {
        return bad(
          `${showValue(written)} cannot be an id`,
          idAllowed,
          'Use a short mark like H-114 or E7; a fuller name goes in name.',
        );
      }
      return good(text);
    },
    {
      description,
      type: ['string', 'integer'],
      // Looser than the reader: \p{L} is not in the patterns that all editors know.
      pattern: '^[^\\s.]+$',
      maxLength: sizeLimits.idLength,
    },
  );
}

/** `piece.port`. */
export function portField(description: string) {
  const allowed = 'piece.port, for instance H-114.steamer';
  return field(
    (written): Reading<string> => {
      if (written === undefined) return bad('it is missing', allowed, 'Write piece and port.');
      const text = asText(written);
      if (text === null || !/^[\p{L}\p{N}_-]+\.[a-z0-9-]+$/u.test(text)) {
        return bad(
          `${showValue(written)} is not a port`,
          allowed,
          'Write the piece, a point, and its port.',
        );
      }
      return good(text);
    },
    { description, type: 'string', pattern: '^[^\\s.]+\\.[a-z0-9-]+$' },
  );
}

/** A date as ISO 8601 writes it. */
export function dateField(description: string) {
  const allowed = 'a date as YYYY-MM-DD';
  return field(
    (written): Reading<string> => {
      if (typeof written !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(written)) {
        return bad(`${showValue(written)} is not a date`, allowed, 'Write year, month and day.');
      }
      const date = new Date(`${written}T00:00:00Z`);
      if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== written) {
        return bad(`there is no ${written}`, allowed, 'Check month and day.');
      }
      return good(written);
    },
    { description, type: 'string', format: 'date' },
  );
}

/** A hose size in any way that people write one. */
export function hoseField(description: string) {
  const allowed = hoseSizes.join(', ');
  return field(
    (written): Reading<HoseSize> => {
      if (written === undefined) return bad('it is missing', allowed, 'Write the hose size.');
      const size = parseHoseSize(written);
      if (size) return good(size);
      return bad(
        `${showValue(written)} is not a hose size in the catalogue`,
        allowed,
        'Write it in inches (2-1/2 or 2.5) or in mm (65 mm); 3-3 is 3 in with 3 in couplings.',
      );
    },
    {
      description: `${description}. ${hoseSizes.map((size) => `${size}: ${formatHoseSize(size)}`).join('; ')}. Also 2.5, 2½ in, 65 mm.`,
      type: ['string', 'number'],
      examples: hoseSizes,
    },
  );
}

/** One of a few words. */
export function choiceField<const T extends string>(choices: readonly T[], description: string) {
  const allowed = choices.join(', ');
  return field(
    (written): Reading<T> => {
      if (written === undefined) return bad('it is missing', allowed, 'Choose one.');
      const found = choices.find((choice) => choice === written);
      if (found !== undefined) return good(found);
      const guess = typeof written === 'string' ? didYouMean(written, choices) : '';
      return bad(`${showValue(written)} is not a choice here${guess}`, allowed, 'Choose one.');
    },
    { description, enum: choices },
  );
}

/** True or false. */
export function flagField(description: string) {
  return field(
    (written): Reading<boolean> =>
      typeof written === 'boolean'
        ? good(written)
        : bad(
            `${showValue(written)} is neither true nor false`,
            'true, false',
            'Write true or false without quotes.',
          ),
    { description, type: 'boolean' },
  );
}
