// A voice note of at most a minute. Stopping, leaving the screen or locking the phone keeps what was said so far.

export const LONGEST_MS = 60_000;
const TYPES = ["audio/webm", "audio/mp4", "audio/ogg"] as const;
const BITS_PER_SECOND = 32_000;

export interface Recorded {
  bytes: ArrayBuffer;
  media_type: (typeof TYPES)[number];
  duration_ms: number;
}

export interface Recording {
  stop: () => void;
  elapsedMs: () => number;
  /** How loud it is now, 0 to 1. */
  level: () => number;
  /** What was said, once it is stopped; null when it was nothing. */
  done: Promise<Recorded | null>;
}

/** The form of file this browser records in; null where it cannot. */
export function recordsIn(): (typeof TYPES)[number] | null {
  if (typeof MediaRecorder === "undefined" || !navigator.mediaDevices) return null;
  return TYPES.find((type) => MediaRecorder.isTypeSupported(type)) ?? null;
}

/** Begins at once; rejects where the person or the phone does not give the microphone. */
export async function record(media_type: (typeof TYPES)[number]): Promise<Recording> {
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
  const recorder = new MediaRecorder(stream, { mimeType: media_type, audioBitsPerSecond: BITS_PER_SECOND });
  const level = levelOf(stream);
  const pieces: Blob[] = [];
  const began_ms = performance.now();
  const elapsedMs = () => Math.round(performance.now() - began_ms);
  const stop = () => void (recorder.state !== "inactive" && recorder.stop());
  const hidden = () => document.hidden && stop();
  const timer = setTimeout(stop, LONGEST_MS);
  const done = new Promise<number>((tell) => {
    recorder.ondataavailable = ({ data }) => void pieces.push(data);
    recorder.onstop = () => tell(elapsedMs());
  }).then(async (duration_ms) => {
    clearTimeout(timer);
    document.removeEventListener("visibilitychange", hidden);
    for (const track of stream.getTracks()) track.stop();
    level.end();
    const bytes = await new Blob(pieces).arrayBuffer();
    return bytes.byteLength ? { bytes, media_type, duration_ms: Math.max(1, Math.min(duration_ms, LONGEST_MS)) } : null;
  });
  document.addEventListener("visibilitychange", hidden);
  recorder.start();
  return { stop, elapsedMs, level: level.now, done };
}

function levelOf(stream: MediaStream): { now: () => number; end: () => void } {
  const context = new AudioContext();
  const analyser = context.createAnalyser();
  const samples = new Uint8Array(analyser.fftSize);
  context.createMediaStreamSource(stream).connect(analyser);
  const now = () => {
    analyser.getByteTimeDomainData(samples);
    return samples.reduce((most, each) => Math.max(most, Math.abs(each - 128)), 0) / 128;
  };
  return { now, end: () => void context.close() };
}
