/**
 * The three exercises, solved and failed as learners do. What is right is never written down here:
 * the judge and the engine are asked, as the page asks them.
 */
import type { Page } from '@playwright/test';
import { inState, readMeter, withFaults, type NodeName, type Wire } from '../../src/lib/engine';
import { faultKey, faultsToName, judge } from '../../src/lib/exercises';
import { faultWords, nodeName } from '../../src/lib/words';
import { course, find, oneOfEachKind, pathOf, predict, wire } from './course';
import { expectProbes, handsOn, type Hands } from './hands';
import { expect, open, test } from './support';

const judgedCard = (page: Page) => page.getByTestId('judged');

/** Text as it stands in a page's source. */
const written = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

test('every exercise is listed, and opens with both its cautions in sight', async ({ page }) => {
	await open(page, '/exercises/');
	const links = page.getByRole('main').getByRole('link');
	const titles = await links.allTextContents();
	for (const { title } of course)
		expect(titles.filter((text) => text.includes(title)).length, title).toBeGreaterThan(0);
	await links.filter({ hasText: course[0]!.title }).first().click();
	await expect(page).toHaveURL(new RegExp(`${pathOf(course[0]!)}$`));

	// Each page carries its own from the first byte on, script or no script.
	for (const exercise of course) {
		const source = await (await page.request.get(pathOf(exercise))).text();
		for (const text of [exercise.title, exercise.aim, ...Object.values(exercise.cautions)])
			expect(source, exercise.id).toContain(written(text));
	}
	// And shows them before anything is done: on the first screen, unscrolled.
	for (const exercise of oneOfEachKind) {
		await page.goto(pathOf(exercise));
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(exercise.title);
		const cautions = page.getByRole('complementary', { name: 'Cautions for this exercise' });
		for (const text of Object.values(exercise.cautions))
			await expect(cautions.getByText(text)).toBeInViewport({ ratio: 1 });
	}
});

test('predict: wrong ticks are played back with their reason, right ones pass', async ({
	page
}) => {
	await open(page, pathOf(predict));
	const hands = handsOn(page);
	const bench = inState(predict.bench, predict.state);
	const name = (pair: readonly [NodeName, NodeName]) =>
		`${nodeName(bench, pair[0])} – ${nodeName(bench, pair[1])}`;
	const box = (pair: readonly [NodeName, NodeName]) =>
		page.getByRole('checkbox', { name: name(pair), exact: true });
	const sounds = predict.pairs.filter((p) => readMeter(bench, 'continuity', ...p).beep);
	const silent = predict.pairs.filter((p) => !sounds.includes(p));
	expect(sounds.length).toBeGreaterThan(0);
	expect(silent.length).toBeGreaterThan(0);

	// Before the answer there is no meter and no lit net to look it up on.
	await expect(page.getByRole('checkbox')).toHaveCount(predict.pairs.length);
	await expect(hands.display).toHaveCount(0);
	await expect(page.locator('svg .lit, svg .net, svg .break')).toHaveCount(0);

	// Everything that is silent is ticked, nothing that sounds.
	for (const pair of silent) await box(pair).check();
	await hands.button('Check my prediction').click();
	const card = judgedCard(page);
	await expect(card).toBeFocused();
	await expect(card).toContainText(`0 of ${predict.pairs.length} pairs are right`);
	await expect(card).toContainText('the score is 0 %');
	const wrong = judge(predict, { kind: 'predict', ticked: silent });
	for (const belief of predict.beliefs.filter((b) => wrong.beliefs.includes(b.id)))
		await expect(card).toContainText(belief.truth);
	const show = card.getByRole('button', { name: 'Show me' });
	await expect(show).toHaveCount(predict.pairs.length);
	for (const i of [0, predict.pairs.length - 1]) {
		const pair = predict.pairs[i]!;
		await expect(card.getByRole('listitem').nth(i)).toContainText('You expected');
		await show.nth(i).click();
		await expectProbes(hands, pair[0], pair[1]);
		const reading = readMeter(bench, 'continuity', pair[0], pair[1]);
		await expect(hands.display).toHaveText(reading.display);
		await expect(hands.word).toContainText(reading.beep ? 'sounds' : 'over range');
		await expect(hands.why).not.toBeEmpty();
	}

	for (const pair of silent) await box(pair).uncheck();
	for (const pair of sounds) await box(pair).check();
	await hands.button('Check my prediction').click();
	await expect(card).toContainText(`All ${predict.pairs.length} pairs are right.`);
	await expect(show).toHaveCount(0);
	// One false tick among right ones costs its share and no more.
	await box(silent[0]!).check();
	await hands.button('Check my prediction').click();
	const one = judge(predict, { kind: 'predict', ticked: [...sounds, silent[0]!] });
	await expect(card).toContainText(`the score is ${Math.round(one.score * 100)} %`);
	await expect(show).toHaveCount(1);
});

async function solder(hands: Hands, wires: readonly Wire[]): Promise<void> {
	await hands.tool('Jumper').check();
	for (const { from, to } of wires) {
		await hands.node(from).click();
		await hands.node(to).click();
		await expect(hands.said).toContainText('Jumper soldered');
	}
}

test('wire: a crossed pair is told, a joint to the chassis lug is unsafe, the solution passes', async ({
	page
}) => {
	await open(page, pathOf(wire));
	const hands = handsOn(page);
	const card = judgedCard(page);
	const check = hands.button('Check my wiring');
	const heard = hands.section('Your wiring').getByTestId('heard');
	await expect(heard).toHaveText(/DESK hears nothing/);

	for (const wrong of wire.wrong) {
		const verdict = judge(wire, wrong.answer);
		await solder(hands, wrong.answer.wires);
		await check.click();
		await expect(card, wrong.name).toBeFocused();
		const failed = verdict.items.filter((i) => !i.right);
		await expect(card.getByRole('listitem'), wrong.name).toHaveCount(failed.length);
		if (wrong.unsafe) {
			await expect(card).toContainText('fails on safety, so the score is 0');
			await expect(card.getByText('Unsafe.')).toHaveCount(failed.filter((i) => i.hazard).length);
			expect(verdict.score).toBe(0);
		} else {
			await expect(card).toContainText(`the score is ${Math.round(verdict.score * 100)} %`);
			await expect(card.getByText('Unsafe.')).toHaveCount(0);
		}
		for (const [i, { pair, found }] of failed.slice(0, 4).entries()) {
			await card.getByRole('button', { name: 'Show me' }).nth(i).click();
			if (pair[0].includes('.')) await expectProbes(hands, pair[0], pair[1]);
			else if (found === 'polarity -')
				await expect(heard).toHaveText(new RegExp(`${pair[1]} at .*polarity reversed \\(−\\)`));
		}
		await hands.button('Start over').click();
		await expect(card).toHaveCount(0);
	}

	await solder(hands, wire.solution);
	await check.click();
	await expect(card).toContainText('The wiring does all that was asked.');
	await expect(card.getByRole('listitem')).toHaveCount(0);
	// With either plug in, the desk hears its source the same way up.
	await hands.button(/^Put line-plug /).click();
	await expect(heard).toHaveText(/DESK hears LINE at .*polarity kept \(\+\)/);
	await hands.button(/^Put mic-plug /).click();
	await expect(heard).toHaveText(/DESK hears MIC at .*polarity kept \(\+\)/);
	// What the exercise gave is not the learner's to take away.
	await expect(page.getByRole('button', { name: /^Take out run/ })).toHaveCount(0);
	await expect(hands.section('Devices, and what is heard')).toHaveCount(0);
});

/** All that the page says by any road: text, names for the ear, values, the drawing's words. */
const everything = (page: Page): Promise<string> =>
	page.evaluate(() => {
		const main = document.querySelector('main')!.cloneNode(true) as HTMLElement;
		// The list of faults to choose from names every fault there is, and so tells nothing; the
		// task and its hints were written before anybody probed.
		for (const part of main.querySelectorAll('select, article > .head, article > .foot'))
			part.remove();
		const names = [...main.querySelectorAll('*')].flatMap((element) =>
			[...element.attributes].map(({ name, value }) => `${name}=${value}`)
		);
		return [main.textContent, ...names].join('\n');
	});

test('find: every reading counts, nothing gives the fault away, and naming it passes', async ({
	page
}) => {
	await open(page, pathOf(find));
	const hands = handsOn(page);
	const used = page.getByTestId('probes-left');
	const truth = withFaults(find.bench, [find.hidden]);
	await expect(used).toContainText(`0 of ${find.most} probes used`);
	await expect(page.getByRole('table')).toHaveCount(0);

	const pairs = [
		['A.2', 'A.T'],
		['A.3', 'A.R'],
		['A.1', 'A.S'],
		['A.2', 'A.R'],
		['A.3', 'A.T'],
		['A.T', 'DESK.hot'],
		['A.T', 'DESK.cold']
	] as const;
	for (const [i, pair] of pairs.entries()) {
		// Both probes off first: a probe that is moved alone would take a reading of its own.
		if (i > 0) await hands.button('Lift both').click();
		await hands.probe(pair[0], pair[1]);
		await expectProbes(hands, pair[0], pair[1]);
		await expect(used).toContainText(`${i + 1} of ${find.most} probes used`);
		await expect(hands.display).toHaveText(
			readMeter(truth, 'continuity', pair[0], pair[1]).display
		);
		await expect(hands.why).toHaveCount(0);
	}
	const log = hands.section('Your hunt').getByRole('listitem');
	await expect(log).toHaveCount(pairs.length);
	// The same pair again, either way round, is no new reading.
	await hands.button('Swap probes').click();
	await expect(used).toContainText(`${pairs.length} of ${find.most} probes used`);
	// With a plug in, the same pair is another one.
	await hands.button(/^Put line-plug /).click();
	await expect(used).toContainText(`${pairs.length + 1} of ${find.most} probes used`);
	await hands.button('Pull it out').click();
	await expect(used).toContainText(`${pairs.length + 1} of ${find.most} probes used`);

	// The drawing lights no net and letters none; the words tell of the wiring as it should be.
	await hands.node('A.2').hover();
	await expect(page.locator('svg .lit, svg .net, svg .on-net, svg .letter')).toHaveCount(0);
	const told = (await everything(page)).replaceAll('Swap probes', '');
	expect(told).toContain('mic-plug');
	expect(told).not.toMatch(/swap|exchang|crossed|bridge|stuck|bent|landed on|net [a-z]\b/i);
	await expect(hands.heard).toHaveCount(0);

	// A fault that the readings speak against.
	const list = faultsToName(find);
	const kind = page.getByLabel('What kind of fault is it?');
	const where = page.getByLabel('Where?');
	const done = hands.button('That is it');
	const card = judgedCard(page);
	await expect(done).toBeDisabled();
	const other = list.find((f) => f.kind === 'open')!;
	await kind.selectOption(other.kind);
	await expect(done).toBeDisabled();
	await where.selectOption(faultKey(other));
	await done.click();
	await expect(card).toBeFocused();
	await expect(card).toContainText('That is not it.');
	await expect(card).toContainText(faultWords(find.bench, find.hidden).slice(1));
	await expect(card).toContainText(faultWords(find.bench, other).slice(1));
	await card.getByRole('button', { name: 'Show me' }).first().click();
	// Afterwards the reasons are there.
	await expect(hands.why).not.toBeEmpty();

	await hands.button('Hunt again').click();
	await expect(used).toContainText(`0 of ${find.most} probes used`);
	await expect(card).toHaveCount(0);
	await hands.probe('A.2', 'A.T');
	await kind.selectOption(find.hidden.kind);
	await where.selectOption(faultKey(find.hidden));
	await done.click();
	await expect(card).toContainText(`Found. You took 1 of ${find.most} readings.`);
	await expect(card).toContainText(/would fit \d+ other explanations/);

	// "Nothing is wrong" is an answer as well, and here it is a wrong one.
	await hands.button('Hunt again').click();
	await kind.selectOption('none');
	await done.click();
	await expect(card).toContainText('That is not it. You took 0');
});
