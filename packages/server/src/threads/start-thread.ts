import { Worker } from 'node:worker_threads';

/**
 * Begins a thread. Built code runs as it is. TypeScript source, which tests run, goes through
 * tsx: Node 20 knows no types, and what `--import` brings does not reach into threads.
 * @param entry the thread's first file @param data its `workerData`, copied
 */
export function startThread(entry: URL, data: object): Worker {
  // Never undefined, and without a member `mod`: the module web-worker, which geotiff loads, takes
  // a thread that has either for one of its own.
  const workerData = { ...data };
  if (!entry.pathname.endsWith('.ts')) return new Worker(entry, { workerData });
  const [tsx, source] = [import.meta.resolve('tsx/esm/api'), entry.href].map((one) =>
    JSON.stringify(one),
  );
  const first = `import(${tsx}).then(({ register }) => { register(); return import(${source}); });`;
  return new Worker(first, {
    eval: true,
    workerData,
    execArgv: ['--conditions=plugside-source'],
  });
}
