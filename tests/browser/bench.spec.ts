/**
 * The main job, by mouse: probe two contacts, put a plug in, move it, read why. And all else that
 * can be done to a bench, each thing as a person would do it and notice it.
 */
import type { Locator, Page } from '@playwright/test';
import { SOCKETS, SOCKET_KINDS, type SocketKind } from '../../src/lib/engine';
import { kindWords } from '../../src/lib/words';
import { expectProbes, handsOn, placeOf, type Hands } from './hands';
import { expect, open, test } from './support';

/** Drags with the mouse in a few steps, as a hand does. */
async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }) {
	await page.mouse.move(from.x, from.y);
	await page.mouse.down();
	await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 3 });
	await page.mouse.move(to.x, to.y, { steps: 3 });
	await page.mouse.up();
}

/** A free spot on socket A's body, between its two halves. */
async function bodyOf(hands: Hands, id = 'A') {
	const [one, tip] = [await placeOf(hands.node(`${id}.3`)), await placeOf(hands.node(`${id}.S`))];
	return { x: tip.x + 20, y: (one.y + tip.y) / 2 };
}

const middleOf = async (locator: Locator) => {
	const box = (await locator.boundingBox())!;
	return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

test('two probes, a plug and the reason why, by mouse', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
	await expect(hands.word).toContainText('both probes are off');

	// Two clicks and no other choice: red first, then black.
	await hands.node('A.T').click();
	await expect(hands.word).toContainText('one probe is off');
	await hands.node('A.2').click();
	await expectProbes(hands, 'A.T', 'A.2');
	await expect(hands.display).toHaveText('0.2 Ω');
	await expect(hands.word).toContainText('sounds');
	await expect(hands.why).toContainText('T and pin 2 are joined by 2 conductors');
	const steps = hands.section('Meter').getByRole('listitem');
	await expect(steps).toHaveText([/T’s spring rests on TN/, /jumper w1.*TN and pin 2/]);

	// The plug goes in under the probes, which stay.
	await hands.button(/^Put p1 /).click();
	await expectProbes(hands, 'A.T', 'A.2');
	await expect(hands.display).toHaveText('over range');
	await expect(hands.word).toContainText('over range');
	await expect(hands.why).toContainText('plug p1 lifts T’s spring off TN');
	await expect(hands.why).toContainText('closing it would join them');
	await expect(hands.said).toContainText('Plug p1 is home');
	await expect(hands.standing).toContainText('TN, RN and SN stand open');

	// Pulled out again, all is as before.
	await hands.travel.getByRole('button', { name: 'Pull it out' }).click();
	await expect(hands.button('Pull it out')).toHaveCount(0);
	await expect(hands.display).toHaveText('0.2 Ω');
	await expectProbes(hands, 'A.T', 'A.2');

	// A TRS plug by click and click, on the socket itself.
	await hands.button('TRS plug').click();
	await expect(hands.button('TRS plug')).toHaveAttribute('aria-pressed', 'true');
	const body = await bodyOf(hands);
	await page.mouse.click(body.x, body.y);
	await expect(hands.travel).toContainText('30.5 mm');
	await expect(hands.why).toContainText('plug p2 lifts T’s spring off TN');

	// By slider most of the way out, then in by half millimetres.
	const slider = hands.travel.getByRole('slider');
	await slider.scrollIntoViewIfNeeded();
	const rail = (await slider.boundingBox())!;
	const at = (mm: number) => ({
		x: rail.x + 9 + ((rail.width - 18) * mm) / 30.5,
		y: rail.y + rail.height / 2
	});
	await drag(page, at(30.5), at(16));
	const travelled = Number(await slider.inputValue());
	expect(travelled).toBeGreaterThan(14);
	expect(travelled).toBeLessThan(18);
	await expect(slider).toHaveAttribute('aria-valuetext', /millimetres/);
	// At that depth neither T nor R is lifted: the ring and tip springs lie deeper.
	await expect(hands.display).toHaveText('0.2 Ω');
	await expect(hands.word).toContainText('sounds');
	const halfIn = hands.button('In ½ millimetre');
	for (let mm = travelled; mm < 18.5; mm += 0.5) await halfIn.click();
	await expect(hands.travel.locator('output')).toHaveText('18.5 mm');
	// Quick steps are told together.
	await expect(hands.said).toContainText(
		'At 18.5 mm the tip reaches R’s spring and lifts it: R leaves RN and touches the tip.'
	);
	await expect(hands.standing).toContainText('stands 18.5 mm deep');
	// T lies deeper still, so what the probes stand on has not moved.
	await expect(hands.display).toHaveText('0.2 Ω');
	await hands.travel.getByRole('button', { name: 'Out ½ millimetre' }).click();
	await expect(hands.said).toHaveText(/Below 18.5 mm .*R falls back on RN/);
	await hands.travel.getByRole('button', { name: 'In 1', exact: true }).click();
	await expect(hands.travel.locator('output')).toHaveText('19.0 mm');

	// A drag and a row of clicks are steps that undo takes back.
	await hands.travel.getByRole('button', { name: 'Seat it' }).click();
	await expect(hands.display).toHaveText('over range');

	// The drawing takes the plug out by a drag to where nothing is, and back by a drag on the socket.
	const drawn = page.locator('svg [data-plug="p2"]');
	const dragPlug = async (to: { x: number; y: number }) => drag(page, await middleOf(drawn), to);
	await hands.tool('Red probe').scrollIntoViewIfNeeded();
	const desk = await placeOf(hands.node('DESK.chassis'));
	await dragPlug({ x: desk.x + 60, y: desk.y + 90 });
	await expect(hands.button('Pull it out')).toHaveCount(0);
	await dragPlug(await bodyOf(hands));
	await expect(hands.travel).toContainText('30.5 mm');
	// And one from the rack, which sends the plug before it out.
	await drag(page, await middleOf(hands.button('dummy plug')), await bodyOf(hands));
	await expect(hands.said).toContainText('Plug p2 comes out');
	expect((await hands.kept()).plugs.map((p) => [p.kind, p.socket])).toEqual([
		['ts', null],
		['trs', null],
		['dummy', 'A']
	]);
});

test('the meter: leads, ohms, volts and the live circuit', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	await hands.probe('A.T', 'A.2');
	await expect(hands.display).toHaveText('0.2 Ω');
	await hands.button('Leads zeroed').click();
	await expect(hands.button('Leads zeroed')).toHaveAttribute('aria-pressed', 'true');
	await expect(hands.display).toHaveText('0.0 Ω');
	await expect(hands.word).toContainText('sounds');
	await hands.button('Leads zeroed').click();
	await expect(hands.display).toHaveText('0.2 Ω');

	// 3 kΩ of the desk, 0.2 Ω of leads and 24 m of 24 AWG: 3002.2 Ω.
	await hands.probe('A.2', 'A.3');
	await expect(hands.word).toContainText('silent');
	await hands.mode('Ohms').check();
	await expect(hands.display).toHaveText('3.002 kΩ');
	await expect(hands.word).toContainText('reads');
	await expect(hands.why).toContainText('through what is inside DESK');
	await hands.probe('A.T', 'A.S');
	await expect(hands.display).toHaveText('over range');

	await hands.mode('Volts').check();
	await hands.probe('A.2', 'A.1');
	await expect(hands.display).toHaveText('0.0 mV');
	const phantom = page.getByLabel('48 V phantom');
	await phantom.check();
	await expect(page.locator('svg').getByText('48 V on')).toBeVisible();
	// The desk's 3 kΩ ties 2 to 3, so both feeds help: 6810 Ω beside 6810 + 3000 Ω is 4020 Ω, and
	// 48 V through that into the meter's own 10 MΩ leaves 47.981 V.
	await expect(hands.display).toHaveText('47.98 V');
	await expect(hands.sentence).toContainText('the red probe is above the black one');
	await hands.button('Swap probes').click();
	await expectProbes(hands, 'A.1', 'A.2');
	await expect(hands.display).toHaveText('-47.98 V');
	await expect(hands.sentence).toContainText('the red probe is below the black one');

	for (const mode of ['Continuity', 'Ohms'] as const) {
		await hands.mode(mode).check();
		await expect(hands.display).toHaveText('no reading');
		await expect(hands.word).toContainText('live circuit');
		await expect(hands.sentence).toContainText('Warning: Live circuit: -47.98 V');
		await expect(hands.sentence).toContainText('switch phantom power off');
	}
	await phantom.uncheck();
	await expect(hands.word).not.toContainText('live circuit');
	await hands.button('Lift both').click();
	await expect(hands.word).toContainText('both probes are off');
	await expect(hands.redSelect).toHaveValue('');
});

/** Counts, in the page, audio contexts and the oscillators that run. */
function countTones() {
	const tones = { contexts: 0, closed: 0, started: 0, running: 0, gains: [] as number[] };
	Object.assign(window, { tones });
	const { close } = AudioContext.prototype;
	window.AudioContext = class extends AudioContext {
		constructor() {
			super();
			tones.contexts++;
		}
		override close() {
			tones.closed++;
			return close.call(this);
		}
	};
	const { start, stop } = OscillatorNode.prototype;
	OscillatorNode.prototype.start = function (when?: number) {
		tones.started++;
		tones.running++;
		this.addEventListener('ended', () => tones.running--);
		start.call(this, when);
	};
	OscillatorNode.prototype.stop = function (when?: number) {
		stop.call(this, when);
	};
	const { setTargetAtTime } = AudioParam.prototype;
	AudioParam.prototype.setTargetAtTime = function (value, ...rest) {
		tones.gains.push(value);
		return setTargetAtTime.call(this, value, ...rest);
	};
}
interface Tones {
	contexts: number;
	closed: number;
	started: number;
	running: number;
	gains: number[];
}
const tonesOf = (page: Page) => page.evaluate(() => (window as unknown as { tones: Tones }).tones);

test('the tone is off until it is asked for, and then sounds exactly while the meter does', async ({
	page
}) => {
	await page.addInitScript(countTones);
	await open(page);
	const hands = handsOn(page);
	await hands.probe('A.T', 'A.2');
	await expect(hands.word).toContainText('sounds');
	expect(await tonesOf(page)).toMatchObject({ contexts: 0, started: 0 });
	const volume = page.getByRole('slider', { name: 'Volume' });
	await expect(volume).toBeDisabled();

	await hands.button('Tone off').click();
	await expect(hands.button('Tone on')).toHaveAttribute('aria-pressed', 'true');
	await expect.poll(() => tonesOf(page)).toMatchObject({ contexts: 1, started: 1, running: 1 });
	const loud = (await tonesOf(page)).gains.at(-1)!;
	expect(loud).toBeGreaterThan(0);
	await volume.fill('0.2');
	await expect.poll(async () => (await tonesOf(page)).gains.at(-1)).toBeLessThan(loud);

	// The plug opens the break: silence, and a word for it.
	await hands.button(/^Put p1 /).click();
	await expect(hands.word).toContainText('over range');
	await expect.poll(() => tonesOf(page)).toMatchObject({ started: 1, running: 0 });
	await hands.button('Pull it out').click();
	await expect(hands.word).toContainText('sounds');
	await expect.poll(() => tonesOf(page)).toMatchObject({ contexts: 1, started: 2, running: 1 });
	// A reading in ohms is no beep, and neither is a lifted probe.
	await hands.mode('Ohms').check();
	await expect.poll(() => tonesOf(page)).toMatchObject({ running: 0 });
	await hands.mode('Continuity').check();
	await expect.poll(() => tonesOf(page)).toMatchObject({ started: 3, running: 1 });
	await hands.button('Lift both').click();
	await expect.poll(() => tonesOf(page)).toMatchObject({ started: 3, running: 0 });
	await hands.probe('A.T', 'A.TN');
	await expect.poll(() => tonesOf(page)).toMatchObject({ started: 4, running: 1 });

	await hands.button('Tone on').click();
	await expect.poll(() => tonesOf(page)).toMatchObject({ running: 0, closed: 1 });
	// Leaving the page ends it too.
	await hands.button('Tone off').click();
	await expect.poll(() => tonesOf(page)).toMatchObject({ contexts: 2, running: 1 });
	await page.getByRole('link', { name: 'Exercises' }).click();
	await expect(page.getByRole('heading', { name: 'Exercises', level: 1 })).toBeVisible();
	await expect.poll(() => tonesOf(page)).toMatchObject({ running: 0, closed: 2 });
});

/** Where a contact stands in each frame of the next two seconds, x in pixels. */
const trackOf = (node: Locator): Promise<number[]> =>
	node.evaluate(
		(element) =>
			new Promise((resolve) => {
				const seen: number[] = [];
				const end = performance.now() + 2000;
				const look = () => {
					seen.push((element as SVGGraphicsElement).getScreenCTM()!.e);
					if (performance.now() < end) requestAnimationFrame(look);
					else resolve(seen);
				};
				look();
			})
	);

/** The contact comes to stand at x, client pixels, within half a pixel. */
const expectPlace = (node: Locator, x: number) =>
	expect.poll(async () => Math.abs((await placeOf(node)).x - x)).toBeLessThan(0.5);

test('turned to the front, the contacts are the mirror image of the rear', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const contacts = SOCKETS['hybrid-9'].contacts.map((c) => `A.${c}`);
	const places = async () =>
		new Map(
			await Promise.all(contacts.map(async (c) => [c, await placeOf(hands.node(c))] as const))
		);
	const rear = await places();
	const panel = await middleOf(page.locator('svg .panel rect'));
	await expect(page.locator('svg').getByText(/seen from the rear/)).toBeVisible();
	// The moulded numbers as an installer meets them on the solder side of a female: 1 left, 2 right.
	expect(rear.get('A.1')!.x).toBeLessThan(rear.get('A.2')!.x);

	const track = trackOf(hands.node('A.TN'));
	await hands.button('Turn to the front').click();
	await expect(page.locator('svg').getByText(/seen from the front/)).toBeVisible();
	await expectPlace(hands.node('A.TN'), 2 * panel.x - rear.get('A.TN')!.x);
	// It really turns: on the way the contact was seen at several places between the two.
	const between = (await track).filter(
		(x) => Math.abs(x - panel.x) < 0.95 * Math.abs(rear.get('A.TN')!.x - panel.x)
	);
	expect(between.length).toBeGreaterThan(0);

	const front = await places();
	for (const c of contacts) {
		const [a, b] = [rear.get(c)!, front.get(c)!];
		expect(Math.abs(a.x + b.x - 2 * panel.x), `${c} mirrors about the panel's middle`).toBeLessThan(
			1
		);
		expect(Math.abs(a.y - b.y), `${c} keeps its height`).toBeLessThan(1);
	}
	expect(front.get('A.2')!.x).toBeLessThan(front.get('A.1')!.x);
	// Numbers stay readable: none is drawn in mirror writing.
	const marks = await page
		.locator('svg [data-node^="A."] text')
		.evaluateAll((texts) => texts.map((t) => (t as SVGGraphicsElement).getScreenCTM()!.a));
	expect(marks.length).toBeGreaterThan(8);
	expect(Math.min(...marks)).toBeGreaterThan(0);
	// Probing works from the front as well.
	await hands.probe('A.T', 'A.2');
	await expect(hands.display).toHaveText('0.2 Ω');
	await hands.button('Turn to the rear').click();
	await expectPlace(hands.node('A.1'), rear.get('A.1')!.x);
});

test('jumpers go in by two clicks and out again; undo, redo and start over', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const wires = hands.section('Jumpers and cables');
	await expect(hands.button('Undo')).toBeDisabled();
	await expect(hands.button('Redo')).toBeDisabled();

	await wires.getByLabel('Gauge').first().selectOption({ label: '28 AWG' });
	await wires.getByLabel('Length, mm').fill('60');
	await hands.tool('Jumper').check();
	await hands.node('A.3').click();
	await expect(hands.said).toContainText('Jumper from 3. Now choose where it goes.');
	await expect(hands.node('A.3')).toHaveAccessibleName(/a jumper starts here/);
	await hands.node('A.RN').click();
	await expect(hands.said).toContainText('Jumper soldered from 3 to RN.');
	// A cable and a jumper are what a cup is meant to take.
	await expect(hands.said).not.toContainText('The cup of');
	await expect(wires).not.toContainText('The cup of');
	await expect(wires.getByRole('listitem').filter({ hasText: 'w2' })).toContainText(
		'3 – RN 60 mm, 28 AWG'
	);
	expect((await hands.kept()).wires[1]).toEqual({
		id: 'w2',
		from: 'A.3',
		to: 'A.RN',
		awg: 28,
		mm: 60
	});
	await hands.probe('A.R', 'A.3');
	await expect(hands.word).toContainText('sounds');

	await hands.button('Undo').click();
	await expect(hands.word).toContainText('over range');
	await expect(wires.getByRole('listitem').filter({ hasText: 'w2' })).toHaveCount(0);
	await hands.button('Redo').click();
	await expect(hands.word).toContainText('sounds');
	await hands.button('Take out w2').click();
	await expect(hands.said).toHaveText('w2 is taken out.');
	await expect(hands.word).toContainText('over range');

	// From the two lists, too; a jumper from a contact to itself is put down again.
	await wires.getByLabel('From').selectOption('A.R');
	await wires.getByLabel('To').selectOption('A.3');
	await hands.button('Solder the jumper').click();
	await expect(hands.word).toContainText('sounds');
	await hands.tool('Jumper').check();
	await hands.node('A.G').click();
	await hands.node('A.G').click();
	await expect(hands.said).toHaveText('Jumper put down.');
	expect((await hands.kept()).wires).toHaveLength(2);

	await hands.button('Start over').click();
	await expect(hands.said).toContainText('Undo brings yours back');
	expect((await hands.kept()).wires.map((w) => w.id)).toEqual(['w1']);
	await expect(hands.word).toContainText('both probes are off');
	await hands.button('Undo').click();
	expect((await hands.kept()).wires).toHaveLength(2);
});

test('each of the twelve kinds stands on the panel with all its contacts', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const kind = page.getByTestId('kind');
	const drawn = () =>
		page
			.locator('svg [data-node^="A."]')
			.evaluateAll((nodes) => nodes.map((n) => n.getAttribute('data-node')!.slice(2)).sort());
	for (const k of SOCKET_KINDS) {
		await kind.selectOption(k);
		await expect(hands.said).toContainText(`A is now a ${kindWords(k).name}.`);
		await expect(hands.section('Panel and sockets')).toContainText(kindWords(k).gloss);
		expect(await drawn(), k).toEqual([...SOCKETS[k].contacts].sort());
		// No contact hides another: each can be hit.
		const places = await Promise.all(SOCKETS[k].contacts.map((c) => placeOf(hands.node(`A.${c}`))));
		const gaps = places.flatMap((p, i) =>
			places.slice(i + 1).map((q) => Math.hypot(p.x - q.x, p.y - q.y))
		);
		expect(Math.min(...gaps), `${k}: contacts stand apart`).toBeGreaterThan(28);
	}
	// A chassis lug and a bush are offered where the kind has them.
	await expect(page.getByLabel('Its bush')).toBeVisible();
	await kind.selectOption('three-pin-male' satisfies SocketKind);
	await expect(page.getByLabel('Its bush')).toHaveCount(0);
	expect((await hands.kept()).sockets[0]!.kind).toBe('three-pin-male');
});

test('three more sockets, a microphone on a plug, and the desk hears it', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const panel = hands.section('Panel and sockets');
	for (const [id, kind] of [
		['B', 'jack-trs-break'],
		['C', 'three-pin-male'],
		['D', 'hybrid-6']
	] as const) {
		await page.getByLabel('Kind of the new socket').selectOption(kind);
		await hands.button('Add socket').click();
		await expect(hands.socket(id)).toBeVisible();
		await expect(panel.getByLabel('Socket in hand')).toHaveValue(id);
	}
	await expect(page.locator('svg [data-socket]')).toHaveCount(4);
	// Names now say which socket; nothing joins two of them until somebody solders.
	await panel.getByLabel('Its label').fill('Gallery');
	await hands.probe('A.T', 'D.T');
	await expect(hands.display).toHaveText('over range');
	await expect(hands.said).toContainText('Black probe on Gallery, T.');
	await hands.tool('Jumper').check();
	await hands.node('A.T').click();
	await hands.node('D.T').click();
	await expect(hands.display).toHaveText('0.2 Ω');
	await expect(hands.why).toContainText('T of Stage 1 and T of Gallery are joined');
	await hands.button('Take D off').click();
	await expect(hands.socket('D')).toHaveCount(0);
	await expect(hands.word).toContainText('one probe is off');

	// A microphone, a loose plug, and a cable between the two.
	const devices = hands.section('Devices, and what is heard');
	await devices.getByLabel('Kind of device').selectOption('mic');
	await hands.button('Add device').click();
	await devices.getByLabel('Kind of plug').selectOption('three-pin');
	await hands.button('Add loose plug').click();
	const wires = hands.section('Jumpers and cables');
	await wires.getByLabel('One end').selectOption('MIC');
	await wires.getByLabel('Other end').selectOption('p2');
	await hands.button('Lay the cable').click();
	await expect(hands.said).toContainText('Cable laid from MIC to p2.');
	await expect(wires.getByRole('listitem').filter({ hasText: 'c2' })).toContainText(
		'MIC, shell – plug p2, 1'
	);
	await expect(hands.heard).toHaveText(/DESK hears nothing/);
	await panel.getByLabel('Socket in hand').selectOption('A');
	await hands.button(/^Put p2 /).click();
	// 3 kΩ behind 200 Ω: 20 log (3000 / 3200) = −0.56 dB, and a little for the cable.
	await expect(hands.heard).toHaveText(/DESK hears MIC at −0\.6 dB, polarity kept \(\+\)/);
	await hands.button('Pull it out').click();
	await expect(hands.heard).toHaveText(/DESK hears nothing/);
	await hands.button('Take away MIC').click();
	await hands.button('Put away p2').click();
	expect((await hands.kept()).cables.map((c) => c.id)).toEqual(['c1']);
});
