// The app over HTTP
export { type AppOptions, createApp } from './app.ts';
export { listen, type RunningServer } from './listen.ts';

// Settings from the environment
export {
  DEFAULT_HOST,
  DEFAULT_PORT,
  isLoopback,
  readSettings,
  type ServerSettings,
} from './settings.ts';
