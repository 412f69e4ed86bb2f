import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	PLUGS,
	PLUG_KINDS,
	SEATED,
	SOCKETS,
	SOCKET_KINDS,
	circuit,
	fits,
	type Bench,
	type PlugKind,
	type Reason,
	type SocketKind
} from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { distinctStates, sectionEvents, sectionOf, withPlugAt } from './section';
import { pinSectionOf } from './sectionPins';
import { heldAt, plugRadius } from './sectionPlug';

const benchWith = (kind: string, more: Record<string, unknown> = {}): Bench =>
	benchOf({ sockets: [{ id: 'A', kind }], ...more });

/** Joints of the socket as the engine has them, as text: what an event must change. */
function joints(bench: Bench): string {
	const isContact = ({ kind }: Reason): boolean =>
		['rest', 'changeover', 'touch', 'mate'].includes(kind);
	const conductors = circuit(bench).conductors.filter((c) => isContact(c.reason));
	return JSON.stringify(conductors.map((c) => [c.a, c.b]));
}

const PAIRS = SOCKET_KINDS.flatMap((socket) =>
	PLUG_KINDS.filter((plug) => fits(plug, socket)).map((plug) => [plug, socket] as const)
);

describe('events of the travel', () => {
	// Spring depths 3, 18.5, 26 plus the starts of the plug's segments, as far as 30.5.
	it.each([
		['trs', 'hybrid-9', [3, 12, 13, 17, 18, 18.5, 26, 27.5, 28.5]],
		['ts', 'hybrid-9', [3, 12, 13.5, 18.5, 26, 27.5, 29]],
		['ts', 'jack-ts', [3, 12, 13.5, 26]],
		['dummy', 'jack-trs', [3, 18.5, 26]],
		['three-pin', 'hybrid-10', [8, 10]],
		['three-pin', 'jack-ts', []],
		['ts', 'three-pin-female', []]
	] as const)('a %s plug in a %s: %j', (plug, socket, events) => {
		expect(sectionEvents(plug, socket)).toEqual(events);
	});

	it('nothing changes between two events, whatever the socket and the plug', () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...PAIRS),
				fc.integer({ min: 0, max: SEATED * 1000 }).map((n) => n / 1000),
				([plug, socket], travel) => {
					const from = [0, ...sectionEvents(plug, socket)].filter((t) => t <= travel).at(-1)!;
					const bench = benchWith(socket);
					expect(joints(withPlugAt(bench, 'A', plug, travel))).toBe(
						joints(withPlugAt(bench, 'A', plug, from))
					);
				}
			),
			{ numRuns: 1000 }
		);
	});

	it('every event of a plug with conductors changes a joint', () => {
		for (const [plug, socket] of PAIRS) {
			if (PLUGS[plug].conductors.length === 0) continue;
			for (const event of sectionEvents(plug, socket)) {
				const at = (travel: number): string =>
					joints(withPlugAt(benchWith(socket), 'A', plug, travel));
				expect(at(event), `${plug} in ${socket} at ${event}`).not.toBe(at(event - 0.01));
			}
		}
	});
});

describe('distinct states', () => {
	it('shows both passing joints of a ring plug: tip on R, and tip bridging T and R', () => {
		const states = distinctStates(benchWith('hybrid-9'), 'A', 'trs');
		const at = (travel: number) => states.find((s) => s.from <= travel && travel < s.to)!;
		expect(at(22).label).toBe('T TN · R tip · S sleeve');
		expect(at(22).nets).toContainEqual(['R', 'tip']);
		expect(at(26.5).label).toBe('T R tip · S sleeve');
		expect(states.at(-1)!.label).toBe('T tip · R ring · S sleeve');
	});

	it('joins R and S through the sleeve of a seated TS plug', () => {
		const last = distinctStates(benchWith('jack-trs'), 'A', 'ts').at(-1)!;
		expect(last.nets).toContainEqual(['R', 'S', 'sleeve']);
	});

	it('covers the whole travel, each state different from the one before', () => {
		for (const [plug, socket] of PAIRS) {
			const states = distinctStates(benchWith(socket), 'A', plug);
			expect(states[0]!.from).toBe(0);
			expect(states.at(-1)!.to).toBe(SEATED);
			states.slice(1).forEach((state, i) => {
				expect(state.from).toBe(states[i]!.to);
				expect(state.label).not.toBe(states[i]!.label);
			});
		}
	});

	it('knows the faults of the socket, and not the wires', () => {
		const faults = [{ kind: 'break-stuck-closed', contact: 'A.TN' }];
		const wires = [{ id: 'w', from: 'A.T', to: 'A.S' }];
		const last = distinctStates(benchWith('jack-trs-break', { faults, wires }), 'A', 'trs').at(-1)!;
		expect(last.nets).toContainEqual(['T', 'TN', 'tip']);
	});

	it('is one empty state where an insulating plug meets a jack without break contacts', () => {
		expect(distinctStates(benchWith('jack-trs'), 'A', 'dummy')).toEqual([
			{ from: 0, to: SEATED, nets: [], label: '' }
		]);
	});
});

describe('the plug’s profile', () => {
	it('is half of 6.35 mm along the shank, and nothing before the nose', () => {
		for (const s of [7, 9, 12, 20, SEATED]) expect(plugRadius(s)).toBe(3.175);
		expect(plugRadius(-0.001)).toBeNull();
	});

	it('has its groove where the tip spring stands when the plug is home', () => {
		const places = Array.from({ length: 60 }, (_, i) => 2.8 + i / 10);
		const least = places.reduce((a, b) => (plugRadius(b)! < plugRadius(a)! ? b : a));
		expect(least).toBeCloseTo(SEATED - 26, 5);
	});

	it('holds a round nose up without letting it in', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: SEATED * 1000 }).map((n) => n / 1000),
				fc.integer({ min: -1000, max: 1000 }).map((n) => n / 1000),
				(s, part) => {
					const nose = 3;
					const radius = plugRadius(s + (part * nose) / 11.5);
					const lowest = heldAt(s, nose)! + nose - Math.sqrt(nose * nose * (1 - part * part));
					if (radius !== null) expect(lowest).toBeGreaterThan(radius * 11.5 - 0.12);
				}
			),
			{ numRuns: 1000 }
		);
	});
});

describe('the section’s words', () => {
	it('say in one sentence what touches and what is open', () => {
		const bench = withPlugAt(benchWith('hybrid-9'), 'A', 'trs', 22);
		expect(sectionOf(bench, 'A').title).toBe(
			'Section of the jack of A, hybrid-9, trs plug 22.0 mm in: ' +
				'T rests, TN closed; R touches the tip, RN open; S touches the sleeve, SN open.'
		);
	});

	it('name every contact of the jack at its lug, and the letter of its net', () => {
		for (const kind of SOCKET_KINDS.filter((k) => SOCKETS[k].springs.length > 0)) {
			const { marks } = sectionOf(benchWith(kind), 'A');
			const named = marks.flatMap((m) => (m.kind === 'word' && m.role === 'mark' ? [m.text] : []));
			const contacts = SOCKETS[kind].contacts.filter((c) => !/^[123G]|^1N/.test(c));
			expect(new Set(named)).toEqual(new Set(contacts));
		}
	});

	const wordsAt = (kind: SocketKind, plug: PlugKind, travel: number): string[] => {
		const view = plug === 'three-pin' ? pinSectionOf : sectionOf;
		const { marks } = view(withPlugAt(benchWith(kind), 'A', plug, travel), 'A');
		return marks.flatMap((m) => (m.kind === 'word' ? [m.text] : []));
	};

	it('name the sleeve as soon as its name finds room on it', () => {
		for (const travel of [15, 18, SEATED])
			expect(wordsAt('hybrid-9', 'trs', travel), `${travel} mm`).toContain('sleeve');
		expect(wordsAt('hybrid-9', 'trs', 8)).not.toContain('sleeve');
	});

	it('explain only the signs that stand on the ruler', () => {
		const changes = 'what it touches changes';
		expect(wordsAt('hybrid-9', 'trs', 3)).toContain(changes);
		expect(wordsAt('hybrid-9', 'dummy', 3)).not.toContain(changes);
		for (const [plug, last] of [
			['trs', 28.5],
			['dummy', 26],
			['three-pin', 10]
		] as const) {
			expect(wordsAt('hybrid-9', plug, last - 0.1), plug).toContain('still ahead');
			expect(wordsAt('hybrid-9', plug, last), plug).not.toContain('still ahead');
		}
	});
});
