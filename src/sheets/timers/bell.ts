/** The sound of a timer: three short tones, made here, so that nothing has to be loaded. */
export interface Bell {
  /** Call it from a click or a key: browsers let a page sound only after one. */
  wake(): void;
  /** False when the browser does not let it sound yet. */
  ring(): boolean;
  close(): void;
}

const toneHz = 880;
const toneS = 0.18;
const everyS = 0.3;
const tones = 3;

export function createBell(make: () => AudioContext = () => new AudioContext()): Bell {
  let context: AudioContext | null = null;

  function ready(): AudioContext | null {
    try {
      context ??= make();
    } catch {
      // No sound in this browser; the page still shows and says that the time is over.
      return null;
    }
    return context;
  }

  return {
    wake() {
      void ready()?.resume();
    },
    ring() {
      const speaker = ready();
      if (speaker === null || speaker.state !== 'running') return false;
      for (let tone = 0; tone < tones; tone++) {
        const from = speaker.currentTime + tone * everyS;
        const oscillator = speaker.createOscillator();
        const volume = speaker.createGain();
        oscillator.frequency.value = toneHz;
        // A soft edge on both sides: a hard one clicks.
        volume.gain.setValueAtTime(0, from);
        volume.gain.linearRampToValueAtTime(0.5, from + 0.02);
        volume.gain.setValueAtTime(0.5, from + toneS - 0.03);
        volume.gain.linearRampToValueAtTime(0, from + toneS);
        oscillator.connect(volume).connect(speaker.destination);
        oscillator.start(from);
        oscillator.stop(from + toneS);
      }
      return true;
    },
    close() {
      void context?.close();
      context = null;
    },
  };
}
