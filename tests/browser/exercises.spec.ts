/**
 * One exercise of each kind, failed and solved by mouse as learners do. What is right is never written down here:
 * the judge and the engine are asked, as the page asks them.
 */
import type { Page } from '@playwright/test';
import { answerTo, toldHunt } from '../../src/lib/diagnosis';
import {
	contactsOf,
	inState,
	pairsOf,
	readMeter,
	withFaults,
	type NodeName,
	type Wire
} from '../../src/lib/engine';
import {
	faultKey,
	faultsToName,
	framesOf,
	judge,
	replayBench,
	solutionOf,
	type Answer,
	type Exercise,
	type Item
} from '../../src/lib/exercises';
import { readCourse } from '../../src/lib/exercises/content.node';
import { cameWords, faultName, faultWords, nodeName, wrongLines } from '../../src/lib/words';
import {
	choose,
	course,
	find,
	name,
	oneOfEachKind,
	order,
	pathOf,
	predict,
	putRight,
	wire
} from './course';
import { expectProbes, handsOn, type Hands } from './hands';
import { expect, open, test } from './support';

const judgedCard = (page: Page) => page.getByTestId('judged');

/** The list of what is wrong, line by line. */
const wrongIn = (page: Page) =>
	judgedCard(page).getByRole('list', { name: 'What is wrong' }).locator(':scope > li');

/** Text as it stands in a page's source, whatever words in it are links. */
const written = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const plain = (source: string) => source.replace(/<!--.*?-->|<\/?(a|code|strong|em)\b[^>]*>/g, '');

/** What is played is what the judge had: the meter on that pair of that bench. */
async function expectPlayed(page: Page, exercise: Exercise, answer: Answer, item: Item) {
	const bench = replayBench(exercise, answer, item);
	const played = judgedCard(page).getByTestId('playback');
	await expect(played).toHaveCount(1);
	await expect(played).toBeInViewport();
	const reading = played.getByTestId('played-reading');
	const shown = readMeter(bench, 'continuity', ...item.pair);
	for (const node of item.pair) await expect(reading).toContainText(nodeName(bench, node));
	await expect(reading).toContainText(shown.display);
	if (!shown.beep && !shown.warning && shown.ohms === null)
		await expect(played.getByTestId('gap').first()).toBeAttached();
}

test('every exercise is listed, and opens with both its cautions in sight', async ({ page }) => {
	test.slow();
	await open(page, '/exercises/');
	const links = page.getByRole('main').getByRole('link');
	const titles = await links.allTextContents();
	for (const { title } of course)
		expect(titles.filter((text) => text.includes(title)).length, title).toBeGreaterThan(0);
	await links.filter({ hasText: course[0]!.title }).first().click();
	await expect(page).toHaveURL(new RegExp(`${pathOf(course[0]!)}$`));

	// Each page carries its own from the first byte on, script or no script.
	for (const exercise of course) {
		const source = plain(await (await page.request.get(pathOf(exercise))).text());
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
	const [{ state, pairs }] = predict.questions as [(typeof predict.questions)[number]];
	const bench = inState(predict.bench, state);
	const nameOf = (pair: readonly [NodeName, NodeName]) =>
		`${nodeName(bench, pair[0])} – ${nodeName(bench, pair[1])}`;
	const box = (pair: readonly [NodeName, NodeName]) =>
		page.getByRole('checkbox', { name: new RegExp(`^${nameOf(pair)}( ?, (right|wrong))?$`) });
	const sounds = pairs.filter((p) => readMeter(bench, 'continuity', ...p).beep);
	const silent = pairs.filter((p) => !sounds.includes(p));
	expect(sounds.length).toBeGreaterThan(0);
	expect(silent.length).toBeGreaterThan(0);

	// Before the answer there is no meter and no lit net to look it up on.
	await expect(page.getByRole('checkbox')).toHaveCount(pairs.length);
	await expect(hands.display).toHaveCount(0);
	await expect(page.locator('svg .lit, svg .net, svg .break')).toHaveCount(0);

	// Everything that is silent is ticked, nothing that sounds.
	for (const pair of silent) await box(pair).check();
	await hands.button('Check my prediction').click();
	const card = judgedCard(page);
	await expect(card).toBeFocused();
	await expect(card).toContainText(`0 of ${pairs.length} pairs are right`);
	await expect(card).toContainText('the score is 0 %');
	const wrong = judge(predict, { kind: 'predict', ticked: silent });
	for (const belief of predict.beliefs.filter((b) => wrong.beliefs.includes(b.id)))
		await expect(card).toContainText(belief.truth);
	const show = card.getByRole('button', { name: 'Show me' });
	await expect(show).toHaveCount(pairs.length);
	await expect(card.getByText('✗')).toHaveCount(1);
	const wrong0: Answer = { kind: 'predict', ticked: silent };
	const items = judge(predict, wrong0).items.filter((i) => !i.right);
	await expectPlayed(page, predict, wrong0, items[0]!);
	for (const i of [1, pairs.length - 1]) {
		await expect(wrongIn(page).nth(i)).toContainText('You expected');
		await show.nth(i).click();
		await expectPlayed(page, predict, wrong0, items[i]!);
	}
	await card.getByRole('button', { name: 'Show me' }).first().click();
	await card.getByRole('button', { name: 'Next thing that is wrong' }).click();
	await expectPlayed(page, predict, wrong0, items[1]!);

	// Afterwards the meter is there for the learner's own hand.
	await hands.redSelect.selectOption(pairs[0]![0]);
	await hands.blackSelect.selectOption(pairs[0]![1]);
	await expect(hands.display).toHaveText(readMeter(bench, 'continuity', ...pairs[0]!).display);
	for (const pair of silent) await box(pair).uncheck();
	for (const pair of sounds) await box(pair).check();
	await hands.button('Check my prediction').click();
	await expect(card).toContainText(`All ${pairs.length} pairs are right.`);
	await expect(show).toHaveCount(0);
	await expect(card.getByRole('link', { name: /^On to: / })).toBeInViewport();
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
		await expect(wrongIn(page), wrong.name).toHaveCount(failed.length);
		if (wrong.unsafe) {
			await expect(card).toContainText('fails on safety, so the score is 0');
			await expect(card.getByText('Unsafe.')).toHaveCount(failed.filter((i) => i.hazard).length);
			expect(verdict.score).toBe(0);
		} else {
			await expect(card).toContainText(`the score is ${Math.round(verdict.score * 100)} %`);
			await expect(card.getByText('Unsafe.')).toHaveCount(0);
		}
		for (const [i, item] of failed.slice(0, 4).entries()) {
			await card.getByRole('button', { name: 'Show me' }).nth(i).click();
			if (item.pair[0].includes('.')) await expectPlayed(page, wire, wrong.answer, item);
			else await expect(card.getByTestId('playback')).toBeInViewport();
		}
		// The learner's own bench stays as it was.
		await expect(hands.button('Pull it out')).toHaveCount(0);
		await hands.button('Start over').click();
		await expect(card).toHaveCount(0);
	}

	await solder(hands, wire.solution);
	await check.click();
	await expect(card).toContainText('The wiring does all that was asked.');
	await expect(wrongIn(page)).toHaveCount(0);
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
	// A plug takes no reading: both probes come off for it.
	await expect(hands.said).toContainText('Both probes are off.');
	await expect(used).toContainText(`${pairs.length} of ${find.most} probes used`);
	await hands.probe('A.T', 'DESK.cold');
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
	await expect(card).toContainText(`You named another fault: ${faultName(find.bench, other)}.`);
	const named: Answer = {
		kind: 'find',
		fault: other,
		probes: [
			...pairs.map((pair) => ({ when: { A: 'none' }, pair })),
			{ when: { A: 'line-plug' }, pair: ['A.T', 'DESK.cold'] }
		]
	};
	const against = judge(find, named).items.find((i) => !i.right)!;
	await card.getByRole('button', { name: 'Show me' }).first().click();
	await expectPlayed(page, find, named, against);
	// Afterwards the reasons are there.
	await hands.redSelect.selectOption('A.2');
	await hands.blackSelect.selectOption('A.T');
	await expect(hands.why).not.toBeEmpty();

	await hands.button('Hunt again').click();
	await expect(used).toContainText(`0 of ${find.most} probes used`);
	await expect(card).toHaveCount(0);
	await hands.probe('A.2', 'A.T');
	await kind.selectOption(find.hidden.kind);
	await where.selectOption(faultKey(find.hidden));
	await done.click();
	await expect(card).toContainText('your readings do not prove it. You took 1 of');
	await expect(card).toContainText(/\d+ classes of faults .*were still possible/);

	// A guess without a reading is told beforehand what it is worth, and then taken for a guess.
	await hands.button('Hunt again').click();
	await expect(hands.section('Your hunt')).toContainText('Even a right guess proves nothing');
	await kind.selectOption(find.hidden.kind);
	await where.selectOption(faultKey(find.hidden));
	await done.click();
	await expect(card).toContainText('Not passed: nothing was measured.');
	await expect(page.getByTestId('replay').getByTestId('hunt-sum')).toHaveCount(0);
});

test('find: each reading says what it ruled out, a wasted one is called so, and the hunt is replayed', async ({
	page
}) => {
	await open(page, pathOf(find));
	const hands = handsOn(page);
	const log = hands.section('Your hunt').getByRole('listitem');
	const list = faultsToName(find);
	const open1 = list.find((f) => f.kind === 'open')!;
	await page.getByLabel(/what do you suspect/).selectOption(open1.kind);
	await page.getByLabel('Where do you suspect it?').selectOption(faultKey(open1));
	await hands.probe('A.2', 'A.T');
	await expect(log.first()).toContainText(/Ruled out \d+ of \d+ classes of faults; \d+ left/);
	await expect(log.first()).toContainText(/Your suspicion (still stands|is ruled out)/);
	await log.first().getByRole('button', { name: 'Which' }).click();
	const gone = (await log.first().textContent())!;
	expect(list.some((f) => gone.includes(faultWords(find.bench, f).slice(1)))).toBe(true);
	expect(gone).not.toContain(faultWords(find.bench, find.hidden).slice(1));
	// A second probe that nothing can follow from, found by the engine.
	const reading = (pair: readonly [NodeName, NodeName]) => {
		const answer = answerTo(withFaults(find.bench, [find.hidden]), { when: {}, pair });
		return { when: {}, pair, answer, suspect: null };
	};
	const wasted = pairsOf(contactsOf(find.bench, 'A')).find((pair) => {
		const readings = [reading(['A.2', 'A.T']), reading(pair)];
		const isFirst = pair.includes('A.2') && pair.includes('A.T');
		return (
			!isFirst &&
			toldHunt({ bench: find.bench, readings, from: {}, symptom: find.symptom, hidden: null })
				.steps[1]!.wasted
		);
	})!;
	await hands.button('Lift both').click();
	await hands.probe(...wasted);
	await expect(log.nth(1)).toContainText('Wasted: whatever the meter said there');
	await page.getByLabel('What kind of fault is it?').selectOption(find.hidden.kind);
	await page.getByLabel('Where?').selectOption(faultKey(find.hidden));
	await hands.button('That is it').click();
	const replay = page.getByTestId('replay');
	await expect(replay).toContainText(/Par is [\d.]+ probes on average/);
	await expect(replay.getByTestId('hunt-sum')).toContainText(
		/One of your two probes was wasted: number 2\. Given up against the best probe each time, together: [\d.]+ bits?/
	);
	await expect(replay).toContainText(/the exact optimum|most telling probe/);
	await replay.getByRole('button', { name: 'Replay step by step' }).click();
	await expect(replay.getByRole('status')).toContainText('Yours, step 1 of 2.');
	await expect(replay.getByTestId('playback')).toBeVisible();
	await replay.getByRole('button', { name: 'Step on' }).click();
	await expect(replay.getByRole('status')).toContainText('step 2 of 2');
	await expect(replay.getByRole('status')).toContainText('Wasted, and counted here once:');
	await replay.getByRole('button', { name: /→ 1$/ }).last().click();
	await expect(replay.getByRole('status')).toContainText('The best hunt, step');
	await expect(replay.getByRole('status')).toContainText('No probe there tells more.');
});

test('put right: changes are counted, hints go from how many to which, the fewest pass', async ({
	page
}) => {
	await open(page, pathOf(putRight));
	const hands = handsOn(page);
	const task = hands.section('Your wiring');
	const card = judgedCard(page);
	const { wires } = putRight.bench;
	await expect(task).toContainText('So far: 0.');
	await hands.button('Check my wiring').click();
	const start: Answer = { kind: 'put-right', wires };
	const failed = judge(putRight, start).items.filter((i) => !i.right);
	await expect(card).toBeFocused();
	await expect(wrongIn(page)).toHaveCount(failed.length);
	await expectPlayed(page, putRight, start, failed[0]!);

	const hint = task.getByRole('status');
	await hands.button('How far am I?').click();
	await expect(hint).toContainText(/^\w+ changes? do(es)? it, and no fewer/);
	await expect(hint).not.toContainText('Look at');
	await hands.button('Tell me more').click();
	await expect(hint).toContainText('Look at');
	await expect(hint).not.toContainText('Put in');
	await hands.button('Tell me more').click();
	await expect(hint).toContainText('Put in a jumper from');
	// There is no more to tell, and the button says so and does nothing.
	await expect(hands.button('No more hints')).toHaveAttribute('aria-disabled', 'true');
	await expect(hint).toContainText('That is all there is to tell of this wiring.');
	await hands.button('No more hints').click({ force: true });
	await expect(hint).toContainText('Put in a jumper from');

	const key = ({ from, to }: Wire) => [from, to].sort().join(' ');
	const goes = wires.filter((w) => !putRight.solution.some((s) => key(s) === key(w)));
	const comes = putRight.solution.filter((s) => !wires.some((w) => key(s) === key(w)));
	expect(goes.length).toBeGreaterThan(0);
	for (const { id } of goes) await hands.button(`Take out ${id}`).click();
	await expect(hint).toContainText('Your wiring has changed since the hint.');
	await expect(hands.button('Ask again')).toBeVisible();
	await solder(hands, comes);
	await expect(task).toContainText(`So far: ${goes.length + comes.length}.`);
	await hands.button('Check my wiring').click();
	await expect(card).toContainText('and fewer would not do.');
	await expect(hint).toBeEmpty();
});

test('choose: what each variant fails is said and drawn, and the fitting ones pass', async ({
	page
}) => {
	await open(page, pathOf(choose));
	const hands = handsOn(page);
	const card = judgedCard(page);
	const variant = (id: string) =>
		page.getByRole('checkbox', { name: new RegExp(`Variant ${id}\\b`) });
	const wrong = choose.wrong[0]!.answer;
	for (const id of wrong.chosen) await variant(id).check();
	await hands.button('Check my choice').click();
	await expect(card).toBeFocused();
	const verdict = judge(choose, wrong);
	const lines = wrongLines(choose, wrong, verdict, false);
	expect(lines.length).toBeGreaterThan(0);
	for (const [i, { text }] of lines.entries())
		await expect(wrongIn(page).nth(i)).toContainText(text);
	await card.getByRole('button', { name: 'Show me' }).first().click();
	await expect(card.getByTestId('playback').getByRole('img').first()).toBeInViewport();

	const right = solutionOf(choose);
	const chosen = right.kind === 'choose' ? right.chosen : [];
	for (const { id } of choose.options) await variant(id).setChecked(chosen.includes(id));
	await hands.button('Check my choice').click();
	await expect(card).toContainText('every need, and nothing else does.');
	// What each of the others lacks is told now.
	const others = card.getByRole('list', { name: 'What the others lack' }).getByRole('listitem');
	await expect(others).toHaveCount(choose.options.length - chosen.length);
	await expect(card).not.toContainText('You had help');
});

test('name: readings are counted, a wrong name is spoken against by a reading, right ones pass', async ({
	page
}) => {
	await open(page, pathOf(name));
	const hands = handsOn(page);
	const card = judgedCard(page);
	const lug = (letter: string) =>
		page.getByRole('button', { name: new RegExp(`^Lug ${letter}\\b`) });
	const reading = page.getByTestId('name-reading');
	await lug('a').click();
	await lug('b').click();
	await expect(reading).toContainText(/lug a – lug b: (sounds|over range|silent)\./);
	await expect(page.getByTestId('probes-used')).toContainText(/^1 /);
	const wrong = name.wrong[0]!.answer;
	const callThem = async (names: Readonly<Record<string, string>>) => {
		for (const [letter, contact] of Object.entries(names))
			await page.getByLabel(`Lug ${letter} is`).selectOption(contact);
		await hands.button('Those are their names').click();
	};
	await callThem(wrong.names);
	await expect(card).toBeFocused();
	const judged = judge(name, wrong);
	const bad = judged.name!.lugs.filter((l) => !l.right);
	await expect(wrongIn(page)).toHaveCount(bad.length);
	await card.getByRole('button', { name: 'Show me' }).first().click();
	await expect(card.getByTestId('played-reading')).toBeInViewport();
	// The answer is kept back until it is asked for, and asking is help.
	const known = card.getByText(/, and you called it/);
	await expect(known).toHaveCount(0);
	await card.getByRole('button', { name: 'Show the answer' }).click();
	await expect(known).toHaveCount(bad.length);
	await callThem(name.lugs);
	await expect(card).toContainText('You had help');
	await expect(card).toContainText(
		`All ${bad.length > 0 ? Object.keys(name.lugs).length : 0} lugs are rightly named.`
	);
	await expect(card).toContainText('You took 1 reading');
});

test('name: a new pair by the menus begins with both probes off, and no state is there twice', async ({
	page
}) => {
	await open(page, pathOf(name));
	const red = page.getByRole('combobox', { name: /Red probe/ });
	const black = page.getByRole('combobox', { name: /Black probe/ });
	const values = await red
		.locator('option')
		.evaluateAll((all) => all.map((o) => (o as HTMLOptionElement).value));
	await red.selectOption(values[1]!);
	await black.selectOption(values[2]!);
	await expect(page.getByTestId('probes-used')).toContainText(/^1 /);
	await red.selectOption(values[3]!);
	await expect(black).toHaveValue('');
	await expect(page.getByTestId('probes-used')).toContainText(/^1 /);
	await black.selectOption(values[4]!);
	await expect(page.getByTestId('probes-used')).toContainText(/^2 /);
	const states = await page.getByLabel('In the socket').locator('option').allTextContents();
	expect(states).not.toContain('With the plugs as they stand');
});

test('order: what the order would have done is played step by step, and a safe one passes', async ({
	page
}) => {
	await open(page, pathOf(order));
	const hands = handsOn(page);
	const card = judgedCard(page);
	const textOf = (id: string) => order.steps.find((s) => s.id === id)!.text;
	const unsafe = order.wrong.find((w) => w.unsafe)!.answer;
	for (const id of unsafe.order) await hands.button(textOf(id)).click();
	await hands.button('Check my order').click();
	await expect(card).toBeFocused();
	await expect(card).toContainText('Nobody may work like this');
	await expect(card).not.toContainText('The wiring does');

	// It opens where the first thing goes wrong, and says what the engine found there.
	const played = card.getByTestId('order-play');
	const { consequences } = judge(order, unsafe).order!;
	const first = consequences[0]!;
	await expect(played).toContainText(`step ${first.at + 1} of ${unsafe.order.length}`);
	await expect(played).toContainText(textOf(first.step));
	for (const c of consequences.filter((x) => x.at === first.at))
		await expect(played).toContainText(cameWords(c));
	// From the first step to the last.
	await played.getByRole('button', { name: /^Step 1: / }).click();
	for (const [i, id] of unsafe.order.entries()) {
		await expect(played.getByRole('status')).toContainText(textOf(id));
		for (const c of consequences.filter((x) => x.at === i))
			await expect(played.getByRole('status')).toContainText(cameWords(c));
		if (i < unsafe.order.length - 1)
			await played.getByRole('button', { name: 'Next step' }).click();
	}
	await expect(played.getByRole('button', { name: 'Next step' })).toBeDisabled();

	const out = page.getByRole('button', { name: /^Out ?: / });
	while ((await out.count()) > 0) await out.first().click();
	for (const id of order.solution) await hands.button(textOf(id)).click();
	await hands.button('Check my order').click();
	await expect(card).toContainText('This order is safe, and it proves something.');
	await expect(wrongIn(page)).toHaveCount(0);
});

test('every unit opens with an example that plays step by step, as the meter has it', async ({
	page
}) => {
	test.slow();
	const { units } = readCourse();
	for (const { number, title, worked } of units) {
		await open(page, `/exercises/unit/${number}/`);
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
		const hands = handsOn(page);
		const step = page.getByRole('region', { name: /^Step \d+ of \d+$/ });
		for (const [i, frame] of framesOf(worked).entries()) {
			if (i > 0) await hands.button('Next step').click();
			await expect(step.getByRole('heading')).toHaveText(`Step ${i + 1} of ${worked.steps.length}`);
			await expect(step.getByRole('status')).toHaveText(frame.words);
			const shown = frame.probes
				? readMeter(frame.bench, frame.mode, ...frame.probes).display
				: '– – –';
			await expect(hands.display).toHaveText(shown);
		}
		await expect(hands.button('Next step')).toBeDisabled();
		await hands.button('Back').click();
		await expect(step.getByRole('heading')).toHaveText(
			`Step ${worked.steps.length - 1} of ${worked.steps.length}`
		);
		await expect(page.getByRole('link', { name: /^Now practise: / })).toBeVisible();
	}
});

test('a word of the trade is explained where it first stands, and nothing is lost by it', async ({
	page
}) => {
	await open(page, pathOf(predict));
	await page.getByRole('checkbox').first().check();
	const word = page.getByRole('article').getByRole('link', { name: 'normals', exact: true });
	await expect(word).toHaveCount(1);
	const card = page.getByTestId('explained');
	await word.click();
	await expect(card).toBeVisible();
	await expect(card).toBeFocused();
	await expect(card.getByRole('heading')).toHaveText(/break contact/i);
	await expect(card).toBeInViewport({ ratio: 1 });
	await page.keyboard.press('Escape');
	await expect(card).toBeHidden();
	await expect(word).toBeFocused();
	await page.keyboard.press('Enter');
	await expect(card).toBeVisible();
	await card.getByRole('button', { name: 'Close' }).click();
	await expect(word).toBeFocused();
	await expect(page.getByRole('checkbox').first()).toBeChecked();
	await word.click();
	await card.getByRole('link', { name: 'In the glossary' }).click();
	await expect(page).toHaveURL(/\/glossary\/#break-contact$/);
});
