/** Streets as a network to lay hose along; no storage, so that a browser can use it. */
export {};
