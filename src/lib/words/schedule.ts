/** Words of the wiring schedule: colours, functions, stages of soldering, warnings, cautions. */
import type { Bench, Millimetres } from '../engine';
import {
	labelName,
	type Colour,
	type CupForm,
	type Run,
	type RunFunction,
	type Stage,
	type Step,
	type Warning
} from '../schedule';
import { andOf, nodeName, sentence, textName } from './names';
import { numberWords } from './numbers';

const COLOUR_WORDS: Readonly<Record<Colour, string>> = {
	BK: 'black',
	BN: 'brown',
	RD: 'red',
	OG: 'orange',
	YE: 'yellow',
	GN: 'green',
	BU: 'blue',
	VT: 'violet',
	GY: 'grey',
	WH: 'white',
	PK: 'pink',
	TQ: 'turquoise'
};
/** `red` for `RD`. */
export const colourName = (colour: Colour): string => COLOUR_WORDS[colour];

const FUNCTION_WORDS: Readonly<Record<RunFunction, string>> = {
	hot: 'hot',
	cold: 'cold',
	shield: 'shield',
	chassis: 'chassis',
	switch: 'switch, no signal of its own',
	'hot-cold': 'joins hot to cold',
	'hot-shield': 'joins hot to shield',
	'cold-shield': 'joins cold to shield',
	'hot-chassis': 'joins hot to chassis',
	'cold-chassis': 'joins cold to chassis',
	'shield-chassis': 'joins shield to chassis'
};
/** What a conductor carries or joins. */
export const functionWords = (what: RunFunction): string => FUNCTION_WORDS[what];

const KIND_WORDS: Readonly<Record<Run['kind'], string>> = {
	jumper: 'jumper',
	wire: 'wire',
	core: 'core'
};
/** `hot, jumper of net A.2`. */
export const runWords = (bench: Bench, { function: what, kind, net }: Run): string =>
	`${functionWords(what)}; ${KIND_WORDS[kind]} of net ${nodeName(bench, net)}`;

const tenths = (n: number): number => Math.round(n * 10) / 10;

/** A length on a cut list: `45.5 mm`, `12.36 m`. Nothing shorter than 0.1 mm is shown as less than that. */
export function cutLength(mm: Millimetres): string {
	if (mm >= 1000) return `${Number((mm / 1000).toFixed(3))} m`;
	return mm < 0.1 ? 'under 0.1 mm' : `${tenths(mm)} mm`;
}

/** What to buy, rounded up: whole millimetres, and whole centimetres from a metre on. */
export const buyLength = (mm: Millimetres): string =>
	mm < 1000 ? `${Math.ceil(mm)} mm` : `${(Math.ceil(mm / 10) / 100).toFixed(2)} m`;

/** A stage of the order of soldering, and why it stands where it stands. */
export interface StageWords {
	readonly title: string;
	readonly why: string;
}
const STAGE_WORDS: Readonly<Record<Stage, StageWords>> = {
	jumpers: {
		title: 'Jumpers on the sockets',
		why: 'First, while each socket still turns in your hand. Cups that a cable will share wait until it is there.'
	},
	wires: {
		title: 'Wires to other places',
		why: 'With the sockets in their panel, so that the lengths are the real ones.'
	},
	cables: {
		title: 'Cups with a cable in them',
		why: 'Last on the panel. A cable is stiff, pulls at its joints and hides the face. Tie it down before you solder it; short cables come before long ones.'
	},
	'far-ends': {
		title: 'Far ends',
		why: 'Plugs and terminals at the other end of the cables. Slip the shell and the sleeves on first.'
	}
};
export const stageWords = (stage: Stage): StageWords => STAGE_WORDS[stage];

const FORM_WORDS: Readonly<Record<CupForm, string>> = {
	cup: 'cup',
	lug: 'lug',
	'chassis-lug': 'chassis lug',
	stud: 'stud on the panel',
	plug: 'terminal in the plug',
	terminal: 'terminal'
};
export const formWords = (form: CupForm): string => FORM_WORDS[form];

/** What to do at a cup: which ends go in, the innermost first, and what is finished then. */
export function stepWords({ ends }: Step): string {
	const names = ends.map((e) => labelName(e.name));
	const into =
		names.length === 1
			? `${names[0]}, then heat once.`
			: `${names.join(', then ')}; bend ${names.length === 2 ? 'both' : `all ${numberWords(names.length)}`} into place, then heat once.`;
	const done = ends.filter((e) => e.done).map((e) => labelName(e.name));
	return done.length === 0 ? into : `${into} Now done: ${andOf(done)}.`;
}

/** A warning as one sentence. */
export function warningWords(bench: Bench, warning: Warning): string {
	switch (warning.kind) {
		case 'crowded':
			return sentence(
				`${textName(bench, warning.at)} takes ${numberWords(warning.conductors.length)} conductors (${andOf(warning.conductors.map(labelName))}); a cup holds two (common practice). Land one of them elsewhere on the same net`
			);
		case 'crossed':
			return sentence(
				`${labelName(warning.conductor)} ${functionWords(warning.function)}. Some panels want that; check that yours does`
			);
		case 'doubled':
			return sentence(
				`${andOf(warning.conductors.map(labelName))} run between the same two lugs; one would do`
			);
		case 'faults':
			return `The file has ${warning.count === 1 ? 'a fault' : `${numberWords(warning.count)} faults`}. This schedule is for the panel without ${warning.count === 1 ? 'it' : 'them'}.`;
	}
}

/** What the page says about its colours. */
export const COLOUR_NOTE =
	'Letters by IEC 60757 (as reported). Which colour stands for which signal is the choice of this schedule; no standard says. Green-and-yellow (GNYE) belongs to protective earth alone, so it is never given here, and neither are plain green, plain yellow, and blue and white, which are neutral of mains in one country or another and a phase elsewhere. Red, black, brown, orange and grey are given, and are live conductors of mains somewhere (grey is also a neutral somewhere): never tell neutral from phase by colour. These are colours for low-voltage signal wires alone, and no colour says that a conductor is dead. A core keeps the colour its maker gave it: put a marker of the listed colour on both ends.';

/** The two cautions of the wiring schedule. */
export const SCHEDULE_CAUTIONS = {
	chassis:
		'A conductor marked “joins shield to chassis” makes the one place where the two meet on this panel. Solder only those that the table lists. If you find a second path afterwards (a metal bush, a long screw, a stray strand on a lug), take it away before the panel goes in.',
	mains:
		'Cut, strip and solder with every cable of the panel unplugged at its far end, phantom power off. The colours of this table are for low-voltage signal wires. In mains wiring red, black, brown, orange and grey are live conductors somewhere, and blue, white or grey is neutral in one country and a phase in another: never tell neutral from phase by colour. Green-and-yellow is protective earth, which is never cut, lifted or borrowed. A bond that protects people in a case with mains in it is not in this table. Mains work is for licensed people under local codes.'
} as const;

/** What an opened panel file says of its panel, or leaves unsaid. */
export const panelWords = ({ panel }: Bench): string =>
	panel.metal
		? 'The panel is metal.'
		: 'The file has no row panel,metal, so the panel is taken as insulating.';

/** Names in a row, the first twelve of many. */
const someOf = (names: readonly string[]): string =>
	names.length > 12
		? `${names.slice(0, 12).join(', ')} and ${names.length - 12} more`
		: andOf(names);

/** What a panel file would leave out of this bench, said before it is saved; '' where it holds all. */
export const leftOutWords = (left: readonly string[]): string =>
	left.length === 0
		? ''
		: `A panel file holds sockets and the wires between them, no cables, devices or plugs. From this bench it would leave out ${someOf(left)}. A bench file keeps all of it.`;

/** What a saved panel file has left out. */
export const savedPanelWords = (left: readonly string[]): string =>
	left.length === 0 ? 'Saved the panel.' : `Saved the panel, without ${someOf(left)}.`;
