/** Plays what is heard, by the browser's own sound synthesis. */
import type { Heard, Signal } from './heard.ts';

const LOUDEST = 0.12;
const GLIDE_S = 0.15;
/** Blades knock at about this rate while a pump starves [Hz]. */
const RATTLE_HERTZ = 11;

export interface Speaker {
  hear(heard: Heard): void;
  signal(which: Signal): void;
  close(): void;
}

/** Call it from a press: browsers let no page sound by itself. */
export function openSpeaker(): Speaker {
  const context = new AudioContext();
  const out = gainInto(context, context.destination, 1);

  const pump = new OscillatorNode(context, { type: 'sawtooth', frequency: 60 });
  const muffled = new BiquadFilterNode(context, { type: 'lowpass', frequency: 320 });
  const pumpLoudness = gainInto(context, out, 0);
  pump.connect(muffled).connect(pumpLoudness);
  pump.start();

  const knocks = new AudioBufferSourceNode(context, { buffer: knocking(context), loop: true });
  const rattleLoudness = gainInto(context, out, 0);
  knocks.connect(rattleLoudness);
  knocks.start();

  const glide = (to: AudioParam, value: number) =>
    to.setTargetAtTime(value, context.currentTime, GLIDE_S);
  return {
    hear: ({ pump: turning, rattle }) => {
      if (turning) glide(pump.frequency, turning.hertz);
      glide(pumpLoudness.gain, turning ? LOUDEST * turning.loudness : 0);
      glide(rattleLoudness.gain, rattle ? LOUDEST : 0);
    },
    signal: (which) => {
      const notes = which === 'radio' ? [880] : [660, 494];
      for (const [at, hertz] of notes.entries()) {
        beep(context, out, hertz, context.currentTime + at * 0.16);
      }
    },
    close: () => void context.close(),
  };
}

function gainInto(context: AudioContext, into: AudioNode, gain: number): GainNode {
  const node = new GainNode(context, { gain });
  node.connect(into);
  return node;
}

function beep(context: AudioContext, out: AudioNode, frequency: number, startS: number): void {
  const note = new OscillatorNode(context, { type: 'sine', frequency });
  const loudness = gainInto(context, out, 0);
  loudness.gain.setValueAtTime(LOUDEST, startS);
  loudness.gain.exponentialRampToValueAtTime(0.001, startS + 0.14);
  note.connect(loudness);
  note.start(startS);
  note.stop(startS + 0.15);
}

/** A second of short bursts of noise. */
function knocking(context: AudioContext): AudioBuffer {
  const { sampleRate } = context;
  const buffer = context.createBuffer(1, sampleRate, sampleRate);
  const samples = buffer.getChannelData(0);
  const everySamples = sampleRate / RATTLE_HERTZ;
  for (let at = 0; at < samples.length; at += 1) {
    const since = (at % everySamples) / everySamples;
    samples[at] = (Math.random() * 2 - 1) * Math.exp(-9 * since);
  }
  return buffer;
}
