/** Free words on the radio that clearly state what a preset says. */
import type { RadioPresetKey } from './radio.ts';
import type { Role } from './role.ts';

/** A sentence with one of these says something else, or leaves it open. */
const leavesOpen =
  /\b(not|never|no longer|nor|neither|nobody|none|without|cancel|disregard|wrong|false|if|when|unless|until|before|once|in case|or|maybe|perhaps|would|could|should|might|may|can|will|shall|must|pretend|simulate|\w+n t)\b/;

/** A sentence that begins so asks, question mark or none. */
const asks =
  /^(am|is|are|was|were|do|does|did|have|has|had|any|what|where|who|why|how|which|say if|tell me)\b/;

/** Words that call somebody, or that come before what is said: no part of it. */
const beforehand = new Set(
  (
    'hey ok okay yes copy copied mayday urgent emergency attention break over again repeat command hydrant ' +
    'attack relay nozzle engine pump booster crew operator source scene instructor line all to from this is the ' +
    'a here it one two three four second third supply hose lost burst of loss'
  ).split(' '),
);

/** What the one who says it calls his own place. */
const ownNames: Readonly<Record<Role, string>> = {
  'hydrant operator': 'hydrant( operator)?|booster|source( engine| pump)?|engine|pump',
  'relay operator': 'relay( engine| pump| operator)?|engine|pump',
  'second relay operator': '(second )?relay( engine| pump| operator)?|engine|pump',
  'third relay operator': '(third )?relay( engine| pump| operator)?|engine|pump',
  'attack operator': 'attack( engine| pump| operator)?|engine|pump',
  'nozzle crew': '(nozzle|line|crew)( crew| \\w{1,5})?|(first|second|third) (nozzle|line|crew)',
  instructor: 'instructor',
  observer: 'observer',
};

const now = '(?: (?:now|here|again|up here|down here|already|altogether|completely))*';
const where =
  '(?: (?:at|on|in|from|to)(?: (?:the|my|our|this))?' +
  '(?: (?:attack|hand|supply|first|second|third))? (?:nozzle|line|hose|tip|stream|pump|engine|intake|supply)(?: [a-z]?d+)?)?';

interface Statement {
  preset: RadioPresetKey;
  /** With somebody who says it of himself. */
  whole: RegExp;
  /** Without: shorthand. */
  short: RegExp;
  /** The shorthand could be an order to whoever was called before it. */
  isOrderToo?: boolean;
}

const known = new Map<Role, readonly Statement[]>();

function statementsOf(role: Role): readonly Statement[] {
  const before = known.get(role);
  if (before) return before;
  const who = `(?:i|we|(?:the |my |our )?(?:${ownNames[role]}))`;
  const be = '(?: am| are| is| m| re| s)?(?: all| just| now| still| back)*';
  const have = '(?: have| has| ve| s)?(?: just| now| all)*';
  const tank = '(?:(?:the|my|our) )?(?:booster )?tank(?: water)?';
  const whole = (verb: string) => new RegExp(`^${who}${verb}${now}${where}${now}$`);
  const short = (verb: string) => new RegExp(`^(?:just |now )?${verb}${now}${where}${now}$`);
  const turns = '(?:going|switching|changing|gone|switched|changed)';
  const statements: Statement[] = [
    {
      preset: 'going to tank',
      whole: whole(`(?:${be} ${turns}| go| went)(?: over| back)?(?: on)?(?: to)? ${tank}`),
      short: short(`${turns}(?: over| back)?(?: on)?(?: to)? ${tank}`),
    },
    {
      preset: 'on tank',
      whole: whole(`${be} on ${tank}`),
      short: short(`(?:back )?on ${tank}`),
      isOrderToo: true,
    },
    {
      preset: 'loss of water',
      whole: whole(
        `(?:${have}(?: a| got| had)* loss of water|${have} lost (?:(?:our|my|the|all|all our) )?water|${be} out of water|${have}(?: got)? no water)`,
      ),
      short: short(
        '(?:a |total |complete )?(?:loss of|lost(?: all)?(?: our| the)?|out of|no) water',
      ),
    },
  ];
  known.set(role, statements);
  return statements;
}

/**
 * The preset that free words clearly state: loss of water, going to the tank, on the tank. A statement is a
 * clause of its own that says it of the one who speaks, or in shorthand after nothing but a call. A sentence
 * that asks, denies, orders or sets a condition states none; where several are stated, the tank counts.
 */
export function statedPreset(text: string, role: Role): RadioPresetKey | undefined {
  const found = new Set<RadioPresetKey>();
  for (const sentence of text.toLowerCase().match(/[^.!?;\n]+[.!?;\n]*/g) ?? [])
    for (const preset of statedIn(sentence, statementsOf(role))) found.add(preset);
  return statementsOf(role).find(({ preset }) => found.has(preset))?.preset;
}

function statedIn(sentence: string, statements: readonly Statement[]): RadioPresetKey[] {
  const words = plain(sentence);
  if (sentence.includes('?') || asks.test(words) || leavesOpen.test(words)) return [];
  const found: RadioPresetKey[] = [];
  let onlyCalled = true;
  const clauses = sentence
    .split(/[,:–—]| - | and /)
    .map(plain)
    .filter((clause) => clause !== '');
  clauses.forEach((clause, at) => {
    const stated = statements.find(
      ({ whole, short, isOrderToo }) =>
        whole.test(clause) || (short.test(clause) && (isOrderToo ? at === 0 : onlyCalled)),
    );
    if (stated) found.push(stated.preset);
    else
      onlyCalled &&= clause.split(' ').every((word) => beforehand.has(word) || /^\d+$/.test(word));
  });
  return found;
}

/** Letters and digits, one space between words. */
function plain(text: string): string {
  return text.replace(/[^a-z0-9]+/g, ' ').trim();
}
