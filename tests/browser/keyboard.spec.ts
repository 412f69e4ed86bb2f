/**
 * Everything without a mouse: the main job and an exercise. After every key the focus stands on
 * something, in sight, with a ring round it.
 */
import type { Page } from '@playwright/test';
import { SOCKETS } from '../../src/lib/engine';
import { faultKey, solutionOf } from '../../src/lib/exercises';
import { choose, exerciseOf, name, order, PAGES, pathOf, predict, putRight, wire } from './course';
import { expectProbes, handsOn, placeOf } from './hands';
import { drawn, expect, open, test as base } from './support';

const NOWHERE = 'the focus is nowhere';

/** Where the focus stands, and what is wrong with that, or ''. */
interface Focused {
	problem: string;
	node: string | null;
	name: string;
	role: string;
}

/** In the page: looks at the focus when it is asked to, and by itself after every key. */
function watchFocus(nowhere: string): void {
	const isInked = ({ stroke, strokeWidth }: CSSStyleDeclaration) =>
		stroke !== 'none' && parseFloat(strokeWidth) >= 2;
	const problemOf = (at: Element | null): string => {
		if (!at || at === document.body || at === document.documentElement) return nowhere;
		const name = `<${at.tagName.toLowerCase()}> ${at.getAttribute('aria-label') ?? at.textContent.trim().slice(0, 40)}`;
		if (!at.matches(':focus-visible')) return `${name}: no ring is shown`;
		const { outlineStyle, outlineWidth } = getComputedStyle(at);
		const isOutlined = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
		// What is drawn has a shape of its own for a ring, inked only while the focus is there.
		const shapes = [...at.querySelectorAll(':scope > .ring, :scope > .hit')];
		const isRinged = shapes.some((shape) => isInked(getComputedStyle(shape)));
		if (!isOutlined && !isRinged) return `${name}: its ring has no ink`;
		const box = at.getBoundingClientRect();
		const inSight =
			box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
		return inSight && box.width > 0 ? '' : `${name}: it is out of sight`;
	};
	const seen: string[] = [];
	addEventListener('keyup', () => seen.push(problemOf(document.activeElement)), true);
	window.problemsSeen = () => seen.splice(0);
	window.focusNow = () => {
		const at = document.activeElement!;
		const label = (at as HTMLInputElement).labels?.[0]?.textContent ?? '';
		return {
			problem: problemOf(at),
			node: at.getAttribute('data-node'),
			name: (at.getAttribute('aria-label') ?? (label || at.textContent)).trim(),
			role: at.getAttribute('type') ?? at.getAttribute('role') ?? at.tagName.toLowerCase()
		};
	};
}
declare global {
	interface Window {
		/** What was wrong after each key since this was last asked. */
		problemsSeen: () => string[];
		focusNow: () => Focused;
	}
}
const test = base.extend({
	page: async ({ page }, use) => {
		await page.addInitScript(watchFocus, NOWHERE);
		await use(page);
	}
});

/** A hand on the keyboard that looks, after every key, where it is. */
function keysOn(page: Page) {
	const focused = () => page.evaluate(() => window.focusNow());
	const press = async (key: string): Promise<Focused> => {
		await page.keyboard.press(key);
		if (key !== 'Tab' && key !== 'Shift+Tab') await drawn(page);
		const at = await focused();
		expect(at.problem, `after ${key}`).toBe('');
		return at;
	};
	return {
		press,
		focused,
		/** Tab (or Shift+Tab) until the focus stands where `is` says. */
		async tabTo(is: (at: Focused) => boolean, key = 'Tab') {
			for (let steps = 0; steps < 200; steps++) if (is(await press(key))) return;
			throw new Error('Tab never came there');
		},
		/** Arrow keys over the drawing to a contact: always the arrow that leads most towards it. */
		async arrowTo(node: string) {
			const placeAt = (name: string) => placeOf(page.locator(`svg [data-node="${name}"]`));
			const target = await placeAt(node);
			let { node: at } = await focused();
			for (let steps = 0; steps < 25; steps++) {
				if (at === node) return;
				const from = await placeAt(at!);
				const [dx, dy] = [target.x - from.x, target.y - from.y];
				const across = dx < 0 ? 'ArrowLeft' : 'ArrowRight';
				const along = dy < 0 ? 'ArrowUp' : 'ArrowDown';
				const order = Math.abs(dx) > Math.abs(dy) ? [across, along] : [along, across];
				const before = at;
				({ node: at } = await press(order[0]!));
				if (at === before) ({ node: at } = await press(order[1]!));
			}
			throw new Error(`The arrows do not lead to ${node}`);
		}
	};
}

test('the main job without a mouse', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const keys = keysOn(page);

	// The first stop of all leads past the head of the page.
	await keys.press('Tab');
	expect((await keys.focused()).name).toBe('Skip to the content');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('main')).toBeFocused();

	// Tab to the drawing: one stop for all its contacts.
	await keys.tabTo((at) => at.node !== null);
	await keys.arrowTo('A.T');
	await keys.press('r');
	await expect(hands.said).toHaveText('Red probe on T.');
	await keys.arrowTo('A.2');
	await keys.press('b');
	await expectProbes(hands, 'A.T', 'A.2');
	await expect(hands.display).toHaveText('0.2 Ω');
	await expect(hands.why).toContainText('T and pin 2 are joined');

	// P puts the loose plug in, P pulls it out; the probes stay and so does the focus.
	await keys.press('p');
	await expect(hands.display).toHaveText('over range');
	await expect(hands.why).toContainText('lifts T’s spring off TN');
	expect((await keys.focused()).node).toBe('A.2');
	await keys.press('p');
	await expect(hands.display).toHaveText('0.2 Ω');

	// J, arrows and J solder a jumper; Escape puts one down that was begun.
	await keys.arrowTo('A.R');
	await keys.press('j');
	await expect(hands.node('A.R')).toHaveAccessibleName(/a jumper starts here/);
	await keys.press('Escape');
	await expect(hands.said).toHaveText('Jumper put down.');
	await keys.press('j');
	await keys.arrowTo('A.3');
	await keys.press('j');
	await expect(hands.said).toContainText('Jumper soldered from R to 3.');
	expect((await hands.kept()).wires).toHaveLength(2);

	// Enter uses what is in hand; which tool that is, is a group of radio buttons.
	await keys.tabTo((at) => at.role === 'radio', 'Shift+Tab');
	await keys.press('ArrowLeft');
	const tool = (await keys.focused()).name;
	expect(tool).toMatch(/Red probe|Black probe|Jumper/);
	while (!(await keys.focused()).name.includes('Red probe')) await keys.press('ArrowRight');
	await keys.tabTo((at) => at.node !== null);
	await keys.arrowTo('A.R');
	await keys.press('Enter');
	await expect(hands.redSelect).toHaveValue('A.R');
	await keys.arrowTo('A.3');
	await keys.press('b');
	await expect(hands.word).toContainText('sounds');

	// A plug from the rack, and its travel by the slider.
	await keys.press('p');
	await keys.tabTo((at) => at.role === 'range' && at.name.includes('Travel'));
	for (let mm = 30.5; mm > 18; mm -= 0.5) await page.keyboard.press('ArrowLeft');
	await expect(hands.travel.locator('output')).toHaveText('18.0 mm');
	await keys.press('ArrowRight');
	await expect(hands.said).toContainText('At 18.5 mm');
	await keys.press('Home');
	await expect(hands.travel.locator('output')).toHaveText('0.0 mm');
	await keys.press('End');
	await expect(hands.travel.locator('output')).toHaveText('30.5 mm');

	// The meter's modes, and the leads.
	await keys.tabTo((at) => at.role === 'radio' && at.name.includes('Continuity'));
	await keys.press('ArrowRight');
	await expect(hands.mode('Ohms')).toBeChecked();
	await keys.press('ArrowRight');
	await expect(hands.mode('Volts')).toBeChecked();
	await keys.press('ArrowRight');
	await expect(hands.mode('Continuity')).toBeChecked();
	await keys.tabTo((at) => at.name === 'Leads zeroed');
	await keys.press('Space');
	await expect(hands.button('Leads zeroed')).toHaveAttribute('aria-pressed', 'true');

	// The table is one stop too, and arrows go from cell to cell.
	await keys.tabTo((at) => / and .*(joined|apart)/.test(at.name));
	const first = (await keys.focused()).name;
	await keys.press('ArrowDown');
	await keys.press('ArrowRight');
	const cell = (await keys.focused()).name;
	expect(cell).not.toBe(first);
	await keys.press('Enter');
	const [, a, b] = /^(\w+) and (\w+),/.exec(cell)!;
	await expectProbes(hands, `A.${a}`, `A.${b}`);
	await keys.press('ArrowUp');
	await keys.press('ArrowLeft');
	expect((await keys.focused()).name).toBe(first);
});

test('what goes away under the focus hands it on', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const keys = keysOn(page);
	/** Goes to a button by keyboard and presses it; the focus must still be somewhere. */
	const use = async (name: string | RegExp) => {
		await hands.button(name).focus();
		await keys.press('Enter');
	};
	await keys.press('Tab');
	await use(/^Put p1 /);
	await use('Out 1');
	await use('Seat it');
	await use('Out ½ millimetre');
	await use('In ½ millimetre');
	await use('Pull it out');
	await use('TRS plug');
	await use(/^Put it in /);
	await use('TRS plug');
	await use('Put it down');
	await hands.redSelect.selectOption('A.T');
	await hands.blackSelect.selectOption('A.S');
	await use('Lift both');
	await use('Take out w1');
	await use('Take out c1');
	await use('Put away p1');
	await use('Take away DESK');
	for (let steps = 0; await hands.button('Undo').isEnabled(); steps++) {
		expect(steps).toBeLessThan(30);
		await use('Undo');
	}
	await use('Redo');
	await use('Take A off');
	await use('Start over');
});

test('the focus is handed on at once, however late its control goes, and on again', async ({
	page
}) => {
	await open(page);
	await page.evaluate(() => {
		const row = document.createElement('div');
		for (const name of ['first', 'second', 'third', 'last'])
			row.append(Object.assign(document.createElement('button'), { textContent: name }));
		document.querySelector('main')!.prepend(row);
		row.querySelector('button')!.focus();
	});
	await page.keyboard.press('Enter');
	/** Where the focus stands in the task after a change, before anything of it is drawn. */
	const seen = await page.evaluate(async () => {
		const buttons = [
			...document.querySelectorAll<HTMLButtonElement>('main > div:first-child button')
		];
		for (let i = 0; i < 20; i++) await new Promise(requestAnimationFrame);
		const after = async (change: () => void) => {
			change();
			await Promise.resolve();
			const at = document.activeElement;
			return at === document.body ? 'nothing' : at?.textContent;
		};
		return [
			await after(() => buttons[0]!.remove()),
			await after(() => (buttons[1]!.disabled = true)),
			await after(() => buttons[2]!.remove()),
			// A hand that gives the focus up is not given it back.
			await after(() => buttons[3]!.blur()),
			await after(() => buttons[3]!.remove())
		];
	});
	expect(seen).toEqual(['second', 'third', 'last', 'nothing', 'nothing']);
});

test('a contact that was clicked keeps the focus when the mouse leaves at once', async ({
	page
}) => {
	await open(page);
	const node = page.locator('[data-node="A.2"]');
	await node.click();
	await page.mouse.move(2, 2);
	// The focus is looked after for some frames.
	await page.evaluate(async () => {
		for (let i = 0; i < 8; i++) await new Promise(requestAnimationFrame);
	});
	await expect(node).toBeFocused();
});

/** More than any page has. */
const MOST_STOPS = 1000;

test('every stop of every page is in sight and has a ring, and Tab gets through', async ({
	page
}) => {
	test.slow();
	for (const path of PAGES) {
		await open(page, path);
		let stops = 0;
		let isOut = false;
		// A few at a time: the page itself looks after each of them.
		while (!isOut && stops < MOST_STOPS) {
			for (let i = 0; i < 20; i++) await page.keyboard.press('Tab');
			const seen = await page.evaluate(() => window.problemsSeen());
			expect(seen, 'looked at after every key').toHaveLength(20);
			const out = seen.findIndex((problem, i) => problem === NOWHERE && stops + i > 0);
			isOut = out >= 0;
			for (const problem of isOut ? seen.slice(0, out) : seen) {
				expect(problem, `${path}, stop ${stops}`).toBe('');
				stops++;
			}
		}
		expect(stops, `${path} can be left by Tab`).toBeLessThan(MOST_STOPS);
		expect(stops, path).toBeGreaterThan(5);
	}
});

/** The judge's card has the focus, and says so. */
async function expectPassed(page: Page, words: string | RegExp): Promise<void> {
	const card = page.getByTestId('judged');
	await expect(card).toBeFocused();
	await expect(card).toBeInViewport();
	await expect(card).toContainText(words);
	await expect(card.getByRole('link', { name: /^On to: |last one/ })).toBeVisible();
}
type Keys = ReturnType<typeof keysOn>;
const isSelect = ({ role }: Focused) => role.startsWith('select');
const isContact = ({ node }: Focused) => node !== null;
const isCheckbox = ({ role }: Focused) => role === 'checkbox';
const valueOf = (page: Page) =>
	page.evaluate(() => (document.activeElement as HTMLSelectElement).value);
/** In a list that has the focus, arrow by arrow down to a value. */
async function pick(page: Page, keys: Keys, value: string): Promise<void> {
	for (let steps = 0; (await valueOf(page)) !== value; steps++) {
		expect(steps, `${value} is in the list`).toBeLessThan(60);
		await keys.press('ArrowDown');
	}
}
async function layJumpers(keys: Keys, wires: readonly { from: string; to: string }[]) {
	await keys.tabTo(isContact);
	for (const { from, to } of wires) {
		await keys.arrowTo(from);
		await keys.press('j');
		await keys.arrowTo(to);
		await keys.press('j');
	}
}

test('predict is failed and solved without a mouse', async ({ page }) => {
	await open(page, pathOf(predict));
	const keys = keysOn(page);
	await keys.tabTo(({ name: is }) => is === 'Check my prediction');
	await page.keyboard.press('Enter');
	const card = page.getByTestId('judged');
	await expect(card).toBeFocused();
	// What is wrong is played without a mouse as well, one after the other.
	await keys.tabTo(({ name: is }) => is === 'Next thing that is wrong');
	const first = await card.getByTestId('played-reading').textContent();
	await keys.press('Enter');
	await expect(card.getByTestId('played-reading')).not.toHaveText(first ?? '');
	expect((await keys.focused()).name).toBe('Show me');

	const solution = solutionOf(predict);
	const ticked = solution.kind === 'predict' ? solution.ticked : [];
	const boxes = page.getByRole('checkbox');
	const count = await boxes.count();
	await keys.tabTo(({ name: is }) => is === 'Check my prediction', 'Shift+Tab');
	for (let left = count; left > 0; left--) await keys.tabTo(isCheckbox, 'Shift+Tab');
	for (let i = 0; i < count; i++) {
		if (i > 0) await keys.tabTo(isCheckbox);
		const [a, b] = predict.questions[0]!.pairs[i]!;
		if (ticked.some((t) => t[0] === a && t[1] === b)) await keys.press('Space');
	}
	await keys.tabTo(({ name: is }) => is === 'Check my prediction');
	await page.keyboard.press('Enter');
	await expectPassed(page, `All ${count} pairs are right.`);
});

test('wire is solved without a mouse', async ({ page }) => {
	await open(page, pathOf(wire));
	const keys = keysOn(page);
	await layJumpers(keys, wire.solution);
	await expect(handsOn(page).said).toContainText('Jumper soldered');
	await keys.tabTo(({ name: is }) => is === 'Check my wiring', 'Shift+Tab');
	await page.keyboard.press('Enter');
	await expectPassed(page, 'The wiring does all that was asked.');
});

test('put right is solved without a mouse', async ({ page }) => {
	await open(page, pathOf(putRight));
	const keys = keysOn(page);
	const key = ({ from, to }: { from: string; to: string }) => [from, to].sort().join(' ');
	const { wires } = putRight.bench;
	const goes = wires.filter((w) => !putRight.solution.some((s) => key(s) === key(w)));
	const comes = putRight.solution.filter((s) => !wires.some((w) => key(s) === key(w)));
	await layJumpers(keys, comes);
	for (const { id } of goes) {
		await keys.tabTo(({ name: is }) => new RegExp(`^Take out\\s*${id}$`).test(is));
		await keys.press('Enter');
		await keys.tabTo(isContact, 'Shift+Tab');
	}
	await keys.tabTo(({ name: is }) => is === 'Check my wiring', 'Shift+Tab');
	await page.keyboard.press('Enter');
	await expectPassed(page, 'and fewer would not do.');
});

test('find is solved without a mouse', async ({ page }) => {
	const find = exerciseOf('find', 'find-lost-shield');
	await open(page, pathOf(find));
	const keys = keysOn(page);
	await keys.tabTo(isContact);
	for (const { when, pair } of find.solution) {
		// One plug state is enough here; P would put a plug in.
		expect(Object.values(when).every((state) => state === 'none')).toBe(true);
		await keys.arrowTo(pair[0]);
		await keys.press('r');
		await keys.arrowTo(pair[1]);
		await keys.press('b');
	}
	await keys.tabTo((at) => isSelect(at) && at.name.startsWith('What kind of fault'), 'Shift+Tab');
	await pick(page, keys, find.hidden.kind);
	await keys.tabTo((at) => isSelect(at) && at.name.startsWith('Where?'));
	await pick(page, keys, faultKey(find.hidden));
	await keys.tabTo(({ name: is }) => is === 'That is it');
	await page.keyboard.press('Enter');
	await expectPassed(page, `Found. You took ${find.solution.length} of ${find.most} readings.`);
});

test('choose is solved without a mouse', async ({ page }) => {
	await open(page, pathOf(choose));
	const keys = keysOn(page);
	const solution = solutionOf(choose);
	const chosen = solution.kind === 'choose' ? solution.chosen : [];
	for (const { id } of choose.options) {
		await keys.tabTo(isCheckbox);
		if (chosen.includes(id)) await keys.press('Space');
	}
	await keys.tabTo(({ name: is }) => is === 'Check my choice');
	await page.keyboard.press('Enter');
	await expectPassed(page, 'every need, and nothing else does.');
});

test('name is solved without a mouse, a reading by key included', async ({ page }) => {
	await open(page, pathOf(name));
	const keys = keysOn(page);
	const isLug = (letter: string) => (at: Focused) => at.name.startsWith(`Lug ${letter}`);
	await keys.tabTo((at) => isLug('a')(at) && !isSelect(at));
	await keys.press('Enter');
	await keys.tabTo(isLug('b'));
	await keys.press('Enter');
	await expect(page.getByTestId('probes-used')).toContainText(/^1 /);
	for (const letter of Object.keys(name.lugs).sort()) {
		await keys.tabTo((at) => isLug(letter)(at) && isSelect(at));
		await pick(page, keys, name.lugs[letter]!);
	}
	await keys.tabTo(({ name: is }) => is === 'Those are their names');
	await page.keyboard.press('Enter');
	const own = name.bench.sockets.find((s) => s.id === name.socket)!;
	expect(SOCKETS[own.kind].contacts.length).toBeGreaterThan(Object.keys(name.lugs).length);
	await expectPassed(page, `All ${Object.keys(name.lugs).length} lugs are rightly named.`);
});

test('order is solved without a mouse, and the focus goes on with the steps', async ({ page }) => {
	await open(page, pathOf(order));
	const keys = keysOn(page);
	const texts = order.solution.map((id) => order.steps.find((s) => s.id === id)!.text);
	const isStep = ({ name: is, role }: Focused) =>
		role !== 'checkbox' && order.steps.some((s) => s.text === is);
	await keys.tabTo(isStep);
	const left = page.getByRole('region', { name: 'Steps' }).getByRole('button');
	for (const text of texts) {
		const names = await left.allTextContents();
		const now = (await keys.focused()).name;
		const by = names.indexOf(text) - names.indexOf(now);
		for (let i = 0; i < Math.abs(by); i++) await keys.press(by > 0 ? 'Tab' : 'Shift+Tab');
		await keys.press('Enter');
	}
	await keys.tabTo(({ name: is }) => is === 'Check my order');
	await page.keyboard.press('Enter');
	await expectPassed(page, 'This order is safe, and it proves something.');
	// The order that passed can be gone through as well.
	await keys.tabTo(({ name: is }) => is.startsWith('Step 2: '));
	await keys.press('Enter');
	await expect(page.getByTestId('order-play').getByRole('status')).toContainText(texts[1]!);
});

test('a link leads past the texts to the task', async ({ page }) => {
	await open(page, pathOf(predict));
	const link = page.getByRole('link', { name: 'Skip to the task' });
	await link.focus();
	await expect(link).toBeInViewport();
	await page.keyboard.press('Enter');
	await expect(page.locator('#task')).toBeFocused();
	await page.keyboard.press('Tab');
	expect(await page.evaluate(() => document.activeElement!.closest('#task') !== null)).toBe(true);
});
