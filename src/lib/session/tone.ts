/**
 * The meter's tone. Browsers let a page sound only after a gesture, so the context is made at the
 * first one while the tone is on, and woken at each later one (a phone may have put it to sleep).
 * `resume()` is never awaited: without a sound device it may stay pending for ever. A tone is always
 * shown in words as well, so every failure here is silent.
 */

/** Pitch, hertz: the A above the middle of the keyboard's treble, soft on a small speaker. */
export const PITCH = 880;
/** Gain at full volume: well under 1, so that a triangle is not harsh. */
export const LOUDEST = 0.2;
/** Time constant of every change of loudness, seconds: short enough to be crisp, long enough not to click. */
export const RAMP = 0.008;
/** After ten time constants nothing is left to hear (−87 dB), seconds. */
const FADED = 10 * RAMP;
const GESTURES = ['pointerdown', 'click', 'keydown'] as const;

interface Voice {
	readonly oscillator: OscillatorNode;
	readonly gain: GainNode;
}

const hadGesture = (): boolean =>
	typeof navigator !== 'undefined' && navigator.userActivation?.hasBeenActive === true;

export class Tone {
	readonly #make: () => AudioContext;
	#context: AudioContext | null = null;
	#voice: Voice | null = null;
	#isOn = false;
	#beeping = false;
	#volume = 0.5;

	/** `make`: for tests. Nothing is made here. */
	constructor(make: () => AudioContext = () => new AudioContext()) {
		this.#make = make;
	}

	/** On or off; off at first. Off gives back everything that the tone took. Never throws. */
	setOn(on: boolean): void {
		if (on === this.#isOn) return;
		this.#isOn = on;
		this.#listen(on);
		if (on && hadGesture()) this.#wake();
		this.#update();
		if (!on) this.#close();
	}

	/** 0 is silence, 1 the loudest. Never throws. */
	setVolume(volume: number): void {
		if (Number.isNaN(volume)) return;
		this.#volume = Math.min(1, Math.max(0, volume));
		this.#quietly(() => this.#voice && this.#fadeTo(this.#voice, this.#level));
	}

	/** Says whether the meter beeps. Never throws. */
	sound(beeping: boolean): void {
		this.#beeping = beeping;
		if (beeping && this.#isOn && !this.#context && hadGesture()) this.#wake();
		this.#update();
	}

	/** Loudness is heard in proportions, so half the volume is a quarter of the gain. */
	get #level(): number {
		return LOUDEST * this.#volume ** 2;
	}

	/** Runs it; a browser that cannot sound stays silent. */
	#quietly(run: () => void): void {
		try {
			run();
		} catch {
			this.#voice = null;
		}
	}

	readonly #onGesture = (): void => {
		this.#wake();
		this.#update();
	};

	#listen(on: boolean): void {
		if (typeof window === 'undefined') return;
		for (const name of GESTURES)
			if (on) window.addEventListener(name, this.#onGesture, { passive: true });
			else window.removeEventListener(name, this.#onGesture);
	}

	#wake(): void {
		this.#quietly(() => {
			this.#context ??= this.#make();
			if (this.#context.state !== 'running') this.#context.resume().catch(() => {});
		});
	}

	/** Makes what is heard agree with what is wanted. */
	#update(): void {
		const wanted = this.#isOn && this.#beeping;
		if (wanted && !this.#voice && this.#context) this.#quietly(() => this.#start(this.#context!));
		if (!wanted && this.#voice) this.#quietly(() => this.#stop(this.#voice!));
	}

	#start(context: AudioContext): void {
		const oscillator = context.createOscillator();
		const gain = context.createGain();
		oscillator.type = 'triangle';
		oscillator.frequency.value = PITCH;
		gain.gain.value = 0;
		oscillator.connect(gain).connect(context.destination);
		oscillator.onended = () => release({ oscillator, gain });
		this.#voice = { oscillator, gain };
		this.#fadeTo(this.#voice, this.#level);
		oscillator.start();
	}

	#fadeTo({ gain }: Voice, level: number): void {
		gain.gain.setTargetAtTime(level, gain.context.currentTime, RAMP);
	}

	#stop(voice: Voice): void {
		this.#voice = null;
		const { state, currentTime } = voice.gain.context;
		this.#fadeTo(voice, 0);
		voice.oscillator.stop(currentTime + FADED);
		// A context that does not run never ends a tone; let go of it at once.
		if (state !== 'running') release(voice);
	}

	/** Closes the context when the last tone has faded. */
	#close(): void {
		const context = this.#context;
		this.#context = null;
		if (context) setTimeout(() => this.#quietly(() => closed(context)), 2 * FADED * 1000);
	}
}

function release({ oscillator, gain }: Voice): void {
	oscillator.disconnect();
	gain.disconnect();
}

const closed = (context: AudioContext): void => void context.close().catch(() => {});
