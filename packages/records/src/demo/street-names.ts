/** Plain words for streets; no place is meant. */
export const numberedWords = {
  avenues: [
    'Cooper',
    'Chandler',
    'Thatcher',
    'Farrier',
    'Turner',
    'Market',
    'Wheelwright',
    'Sawyer',
    'Potter',
    'Weaver',
    'Glazier',
  ],
  streets: [
    'Alder',
    'Birch',
    'Cedar',
    'Dogwood',
    'Elder',
    'Long',
    'Fir',
    'Hazel',
    'Juniper',
    'Larch',
    'Maple',
  ],
  west: [
    'Plover',
    'Curlew',
    'Lapwing',
    'Heron',
    'Kestrel',
    'Swift',
    'Wren',
    'Finch',
    'Dunlin',
    'Teal',
  ],
  hill: ['Granite', 'Slate', 'Flint', 'Marble', 'Basalt', 'Chalk', 'Quartz', 'Jasper'],
  works: ['Anvil', 'Bellows', 'Crucible', 'Furnace', 'Hammer', 'Kiln', 'Loom'],
} as const;

/** Each in turn, then with a number. */
export function namesInTurn(words: readonly string[], ending: string): () => string {
  let given = 0;
  return () => {
    const word = words[given % words.length]!;
    const round = Math.floor(given / words.length);
    given += 1;
    return round === 0 ? `${word} ${ending}` : `${word} ${ending} ${round + 1}`;
  };
}
