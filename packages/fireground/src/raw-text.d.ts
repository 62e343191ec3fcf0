/** A file as text, as Vite gives it; tests only. */
declare module '*?raw' {
  const text: string;
  // biome-ignore lint/style/noDefaultExport: a raw import of Vite's has no other
  export default text;
}
