/**
 * Files, links and what the browser keeps: a bench comes back as it was, and one that cannot be
 * read leaves the present bench alone and says where and why.
 */
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { fileOf, makeBench, parseBench, type Bench } from '../../src/lib/engine';
import { handsOn, type Hands } from './hands';
import { expect, open, ready, test } from './support';

/** A bench unlike the first one, in everything a file holds. */
const OTHER = {
	format: 'solderside-bench',
	version: 1,
	title: 'Gallery rack',
	panel: { metal: false },
	sockets: [
		{ id: 'X', kind: 'jack-ts-changeover', bush: 'metal', label: 'Lamp & relay' },
		{ id: 'Y', kind: 'hybrid-10' }
	],
	wires: [{ id: 'k', from: 'X.NO', to: 'Y.1N', awg: 22, mm: 130 }],
	plugs: [{ id: 'q', kind: 'trs', socket: 'Y', travel: 22.5 }],
	devices: [{ id: 'OUT', kind: 'line-out' }],
	cables: [{ id: 'z', m: 7.5, awg: 20, cores: [['OUT.hot', 'q.tip']] }],
	faults: [{ kind: 'break-dirty', contact: 'Y.RN', ohms: 12 }]
};
const other = (): Bench => {
	const parsed = parseBench(JSON.stringify(OTHER));
	if (!parsed.ok) throw new Error(parsed.problem.message);
	return parsed.value;
};

/** Chooses a file the way a person does, through the button. */
async function openFile(page: Page, name: string, text: string | Buffer): Promise<void> {
	const choosing = page.waitForEvent('filechooser');
	await page.getByRole('button', { name: 'Open file' }).click();
	const buffer = Buffer.from(text);
	await (await choosing).setFiles({ name, mimeType: 'application/json', buffer });
}

async function savedFile(page: Page): Promise<{ name: string; text: string }> {
	const saving = page.waitForEvent('download');
	await page.getByRole('button', { name: 'Save file' }).click();
	const download = await saving;
	return {
		name: download.suggestedFilename(),
		text: readFileSync(await download.path(), 'utf8')
	};
}

/** Something done by hand, so that a lost bench would be noticed. */
async function mark(page: Page, hands: Hands): Promise<Bench> {
	await page.getByLabel('Title of the bench').fill('Mine');
	await hands.button(/^Put p1 /).click();
	await expect.poll(async () => (await hands.kept()).plugs[0]!.socket).toBe('A');
	return hands.kept();
}

/** Every line of a bench that a person could look at, as the screen has it. */
async function shown(page: Page): Promise<unknown> {
	return {
		title: await page.getByLabel('Title of the bench').inputValue(),
		sockets: await page
			.locator('svg [data-socket]')
			.evaluateAll((all) => all.map((s) => s.getAttribute('data-socket'))),
		soldered: await handsOn(page)
			.section('Jumpers and cables')
			.getByRole('listitem')
			.allInnerTexts(),
		devices: await handsOn(page)
			.section('Devices, and what is heard')
			.getByRole('listitem')
			.allInnerTexts()
	};
}

test('a saved file opens again as the same bench, and a broken one changes nothing', async ({
	page
}) => {
	await open(page);
	const hands = handsOn(page);
	const mine = await mark(page, hands);
	const before = await shown(page);
	const { name, text } = await savedFile(page);
	expect(name).toBe('mine.bench.json');
	const parsed = parseBench(text);
	expect(parsed.ok && parsed.value).toEqual(mine);

	await openFile(page, 'other.bench.json', JSON.stringify(OTHER));
	await expect(hands.said).toContainText('Opened other.bench.json');
	expect(await hands.kept()).toEqual(other());
	await expect(page.getByLabel('Title of the bench')).toHaveValue('Gallery rack');
	await expect(hands.socket('Y')).toBeVisible();
	await expect(page.getByTestId('kind')).toHaveValue('jack-ts-changeover');

	await openFile(page, name, text);
	await expect(page.getByLabel('Title of the bench')).toHaveValue('Mine');
	expect(await hands.kept()).toEqual(mine);
	expect(await shown(page)).toEqual(before);
	expect((await savedFile(page)).text).toBe(text);

	// Every kind of bad file: the words name the file, the path and what would be right.
	const alert = page.getByRole('alert');
	const bench = JSON.parse(text);
	const bad: [string, string | Buffer, RegExp][] = [
		['cut.json', text.slice(0, 40), /cut\.json .*At \$/],
		['empty.json', '', /empty\.json .*At \$/],
		['list.json', '[]', /At \$: .*object/],
		['version.json', JSON.stringify({ ...bench, version: 2 }), /At \$\.version: .*1/],
		[
			'wire.json',
			JSON.stringify({ ...bench, wires: [{ id: 'w1', from: 'A.TN', to: 'A.X9' }] }),
			/At \$\.wires\[0\]\.to: .*no contact "X9"; it has 1, 2, 3/
		],
		['extra.json', JSON.stringify({ ...bench, owner: 'x' }), /At \$(\.owner)?: /],
		['bytes.json', Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), /At \$: .*UTF-8/],
		['big.json', Buffer.alloc(1_048_577, 0x20), /At \$: .*1 MiB/]
	];
	for (const [file, content, reason] of bad) {
		await openFile(page, file, content);
		await expect(alert, file).toContainText(`${file} was not opened; your bench is untouched.`);
		await expect(alert, file).toHaveText(reason);
		expect(await hands.kept(), file).toEqual(mine);
	}
	expect(await shown(page)).toEqual(before);
	// The same file, mended, is taken, and the complaint goes.
	await openFile(page, 'version.json', text);
	await expect(alert).toHaveCount(0);
	await hands.button('Undo').click();
	await expect(page.getByLabel('Title of the bench')).toHaveValue('Mine');
});

test('a link carries the bench to another browser, and a broken one changes nothing', async ({
	page,
	context,
	browser
}) => {
	await context.grantPermissions(['clipboard-read', 'clipboard-write']);
	await open(page);
	const hands = handsOn(page);
	const mine = await mark(page, hands);
	await hands.button('Copy link').click();
	await expect(hands.said).toContainText('is copied');
	const link = await page.evaluate(() => navigator.clipboard.readText());
	expect(link).toMatch(/^http:\/\/localhost:\d+\/#bench=[\w-]+$/);
	await expect(page.getByLabel('Link to this bench')).toHaveValue(link);

	// Another browser that has never been here.
	const stranger = await browser.newContext({ serviceWorkers: 'block' });
	const there = await stranger.newPage();
	await there.goto(link);
	await ready(there);
	await expect(there.getByLabel('Title of the bench')).toHaveValue('Mine');
	await expect.poll(() => handsOn(there).kept()).toEqual(mine);
	expect(await shown(there)).toEqual(await shown(page));
	await expect(handsOn(there).travel).toContainText('30.5 mm');
	// The link has done its work: what is made since stays through a reload.
	await there.getByLabel('Title of the bench').fill('Theirs');
	await there.reload();
	await ready(there);
	await expect(there.getByLabel('Title of the bench')).toHaveValue('Theirs');

	// Broken links, met on a page that holds a bench.
	const base = new URL(link).origin;
	const packed = (text: string) => deflateRawSync(text).toString('base64url');
	const bad: [string, RegExp][] = [
		[link.slice(base.length + 1, -9), /cut short|changed/],
		['#bench=', /cut short|changed/],
		['#bench=ab%3Cimg%3E', /stands in the link/],
		[`#bench=${packed('{"format":"something-else","version":1}')}`, /solderside-bench/],
		[`#bench=${packed('["a"]')}`, /object/],
		[`#bench=${'A'.repeat(16_400)}`, /16 kB/],
		// 40 kB that would be 40 MB of spaces.
		[`#bench=${packed(`{${' '.repeat(9_000_000)}}`).slice(0, 16_000)}`, /256 kB/]
	];
	const alert = there.getByRole('alert');
	for (const [fragment, reason] of bad) {
		await there.goto('about:blank');
		await there.goto(`${base}/${fragment}`);
		await ready(there);
		await expect(alert, fragment.slice(0, 40)).toContainText(
			'The link was not opened; your bench is untouched.'
		);
		await expect(alert, fragment.slice(0, 40)).toHaveText(reason);
		await expect(there.getByLabel('Title of the bench')).toHaveValue('Theirs');
		expect((await handsOn(there).kept()).plugs).toEqual(mine.plugs);
	}
	// A good one that is typed into the same page takes the bad one's place.
	await there.evaluate((hash) => (location.hash = hash), new URL(link).hash);
	await expect(there.getByLabel('Title of the bench')).toHaveValue('Mine');
	await expect(alert).toHaveCount(0);
	await handsOn(there).button('Undo').click();
	await expect(there.getByLabel('Title of the bench')).toHaveValue('Theirs');
	await stranger.close();

	// A bench that is too large for a link is refused kindly, before anybody sends it.
	let seed = 1;
	const letters = Array.from({ length: 30_000 }, () => {
		seed = (seed * 48_271) % 2_147_483_647;
		return String.fromCharCode(97 + (seed % 26));
	});
	const many = { ...fileOf(mine), title: letters.join('') };
	await openFile(page, 'many.json', JSON.stringify(many));
	await expect(hands.said).toContainText('Opened many.json');
	await hands.button('Copy link').click();
	await expect(page.getByRole('alert')).toHaveText(/16 kB.*as a file instead/);
});

test('a file of a thousand wires opens, and the page goes on answering', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const contacts = ['T', 'R', 'S', 'TN', 'RN', 'SN', '1', '2', '3'];
	const wires = Array.from({ length: 1000 }, (_, i) => ({
		id: `w${i}`,
		from: `A.${contacts[i % 9]}`,
		to: `A.${contacts[(i + 1 + (i % 7)) % 9]}`,
		mm: i + 1
	}));
	const bench = { format: 'solderside-bench', version: 1, wires };
	const sockets = [{ id: 'A', kind: 'hybrid-9' }];
	await openFile(page, 'thousand.json', JSON.stringify({ ...bench, sockets }));
	await expect(hands.said).toContainText('Opened thousand.json');
	await hands.probe('A.T', 'A.2');
	await expect(hands.display).toHaveText('0.2 Ω');
	await page.reload();
	await ready(page);
	expect((await hands.kept()).wires).toHaveLength(1000);
	await hands.button('Start over').click();
	await expect(hands.section('Jumpers and cables').getByRole('listitem')).toHaveCount(2);
});

const NASTY = `<img src=x onerror=alert(1)>`;

test('whatever a file calls its parts is shown as text', async ({ page, problems }) => {
	await open(page);
	const hands = handsOn(page);
	let alarmed = false;
	page.on('dialog', (dialog) => {
		alarmed = true;
		void dialog.dismiss();
	});
	const bench = {
		...fileOf(other()),
		title: NASTY,
		sockets: [{ id: 'X', kind: 'hybrid-9', label: `${NASTY}<b>` }]
	};
	await openFile(
		page,
		`${NASTY}.json`.replaceAll('/', ''),
		JSON.stringify({
			...bench,
			wires: [],
			plugs: [],
			cables: [],
			faults: []
		})
	);
	await expect(page.getByLabel('Title of the bench')).toHaveValue(NASTY);
	await expect(hands.said).toContainText(`Opened ${NASTY}.json`);
	await expect(page.locator('svg').getByText(NASTY)).toBeVisible();
	await expect(page.getByRole('heading', { name: /Continuity table of/ })).toContainText(NASTY);
	await expect(page.locator('img')).toHaveCount(0);
	await expect(page.locator('main b')).toHaveCount(0);

	// In a complaint, too.
	await openFile(page, 'bad.json', JSON.stringify({ ...bench, title: 5, [NASTY]: 1 }));
	await expect(page.getByRole('alert')).toContainText('bad.json was not opened');
	await expect(page.locator('img')).toHaveCount(0);
	// And a file's name of our own making is a plain one.
	expect((await savedFile(page)).name).toBe('img-src-x-onerror-alert-1.bench.json');
	expect(alarmed).toBe(false);
	expect(problems).toEqual([]);
});

test('the browser keeps the bench and the settings, and says so when it cannot read them', async ({
	page
}) => {
	await open(page);
	const hands = handsOn(page);
	const mine = await mark(page, hands);
	await hands.mode('Volts').check();
	await hands.button('Tone off').click();
	await page.getByRole('slider', { name: 'Volume' }).fill('0.8');
	await hands.button('Turn to the front').click();
	await page.getByLabel('Sheet').selectOption('dark');
	const paper = () =>
		page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
	const dark = await paper();

	await page.reload();
	await ready(page);
	await expect(page.getByLabel('Title of the bench')).toHaveValue('Mine');
	expect(await hands.kept()).toEqual(mine);
	await expect(hands.mode('Volts')).toBeChecked();
	await expect(hands.button('Tone on')).toBeVisible();
	await expect(page.getByRole('slider', { name: 'Volume' })).toHaveValue('0.8');
	await expect(hands.button('Turn to the rear')).toBeVisible();
	await expect(page.locator('svg').getByText(/seen from the front/)).toBeVisible();
	await expect(page.getByLabel('Sheet')).toHaveValue('dark');
	expect(await paper()).toBe(dark);
	await page.getByLabel('Sheet').selectOption('light');
	expect(await paper()).not.toBe(dark);

	// Text that another release or a stranger left there: nothing is lost, and it is said.
	await page.goto('/exercises/');
	await page.evaluate(() => {
		localStorage.setItem('solderside-bench-1', '{"format":"solderside-bench","version":9}');
		localStorage.setItem('solderside-settings-1', '"?"');
	});
	await open(page);
	await expect(page.getByRole('alert')).toHaveText(
		/could not be read.*The text is kept.*\$\.version/
	);
	await expect(page.getByLabel('Title of the bench')).toHaveValue('Wall plate by the stage');
	await expect(hands.mode('Continuity')).toBeChecked();
	const keys = await page.evaluate(() => Object.keys(localStorage));
	expect(keys.some((key) => key.startsWith('solderside-bench-1-broken-'))).toBe(true);
	await expect.poll(async () => makeBench(await hands.kept())).toContain('Wall plate by the stage');
});
