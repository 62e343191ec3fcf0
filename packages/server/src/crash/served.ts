/** A server in a process of its own, to be killed: `served.js <database file>` prints its address. */
import { tmpdir } from 'node:os';
import { openStore } from '@plugside/records';
import { createApp } from '../app.ts';
import { listen } from '../listen.ts';

const [file = ''] = process.argv.slice(2);
const store = await openStore({ file });
const app = createApp({ webRoot: tmpdir(), version: 'test', store });
const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
console.log(server.url);
