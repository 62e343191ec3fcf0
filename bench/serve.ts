/** The built server over a SQLite file, as `npm start` has it once all is built. Prints its address. */
import { join } from 'node:path';
import { createApp, listen, openRecords } from '@plugside/server';

const [file, webRoot] = process.argv.slice(2) as [string, string];
const { store } = await openRecords({ target: { file }, isDefault: false, demo: false });
const app = createApp({ webRoot: join(webRoot), version: 'bench', store });
const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
console.log(server.url);
