/** Node with a server that answers a word: what no server on Node can be faster than. Prints its address. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

const server = createServer((_asked, answer) => answer.end('{}'));
server.listen(0, '127.0.0.1', () => {
  console.log(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
});
