/**
 * A drawing as a file: SVG with its fonts inside, or PNG. The fonts are the page's own files, read
 * from where the page came from, so that the picture looks the same on a machine without them.
 */
import sans from '@fontsource-variable/commissioner/files/commissioner-latin-wght-normal.woff2?url';
import sansGreek from '@fontsource-variable/commissioner/files/commissioner-greek-wght-normal.woff2?url';
import serif from '@fontsource-variable/literata/files/literata-latin-wght-normal.woff2?url';
import serifItalic from '@fontsource-variable/literata/files/literata-latin-wght-italic.woff2?url';

const FACES = [
	{ family: 'Commissioner Variable', style: 'normal', url: sans, range: 'U+0000-00FF,U+2000-206F' },
	{ family: 'Commissioner Variable', style: 'normal', url: sansGreek, range: 'U+0370-03FF' },
	{ family: 'Literata Variable', style: 'normal', url: serif, range: 'U+0000-00FF,U+2000-206F' },
	{ family: 'Literata Variable', style: 'italic', url: serifItalic, range: 'U+0000-00FF' }
] as const;

function base64(bytes: Uint8Array): string {
	let text = '';
	for (let i = 0; i < bytes.length; i += 8192)
		text += String.fromCharCode(...bytes.subarray(i, i + 8192));
	return btoa(text);
}

async function faceOf({ family, style, url, range }: (typeof FACES)[number]): Promise<string> {
	const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
	const source = `url(data:font/woff2;base64,${base64(bytes)}) format('woff2')`;
	return `@font-face{font-family:'${family}';font-style:${style};font-weight:100 900;src:${source};unicode-range:${range}}`;
}

/** The SVG text with the fonts it names inside it. Without a connection to them, as it was. */
export async function withFonts(svg: string): Promise<string> {
	try {
		const faces = await Promise.all(FACES.map(faceOf));
		return svg.replace('<style>', `<style>${faces.join('')}`);
	} catch {
		return svg;
	}
}

function save(blob: Blob, name: string): void {
	const url = URL.createObjectURL(blob);
	const anchor = document.createElement('a');
	anchor.href = url;
	anchor.download = name;
	anchor.click();
	setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** Saves the SVG text as a file of that name. */
export async function downloadSvg(svg: string, name: string): Promise<void> {
	save(new Blob([await withFonts(svg)], { type: 'image/svg+xml' }), name);
}

/** Saves the drawing as PNG, `scale` pixels a unit. Rejects where the browser cannot draw it. */
export async function downloadPng(svg: string, name: string, scale = 2): Promise<void> {
	const image = new Image();
	image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(await withFonts(svg))}`;
	await image.decode();
	const canvas = document.createElement('canvas');
	canvas.width = image.naturalWidth * scale;
	canvas.height = image.naturalHeight * scale;
	canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
	const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
	if (!blob) throw new Error('The browser could not make a PNG of the drawing');
	save(blob, name);
}
