/**
 * Plans that are kept, because a search is no work for a page that is being opened. The file is what
 * `tellPlan` finds; a test works every one of them out again and compares. After a change of the
 * part table: `npx vitest run -u src/lib/diagnosis/tell.test.ts`, and look at what changed.
 */
import { SOCKET_KINDS, type SocketKind } from '../engine';
import { lookAlikes } from './tell';
import { tellPlan, type Plan } from './tellPlan';
import kept from './tellPlans.json';

/** Groups of kinds, two or more, that the eye does not tell apart. */
export const lookAlikeGroups = (): SocketKind[][] =>
	SOCKET_KINDS.map((kind) => [kind, ...lookAlikes(kind)].sort()).filter(
		(group, i, all) => group.length > 1 && all.findIndex((g) => g.join() === group.join()) === i
	);

/** The plan that tells this kind from all that look like it; null if there is none, or no need. */
export function planFor(kind: SocketKind): Plan | null {
	const group = [kind, ...lookAlikes(kind)].sort();
	if (group.length === 1) return null;
	const plans: Readonly<Record<string, unknown>> = kept;
	return (plans[group.join(' ')] as Plan | undefined) ?? tellPlan(group);
}
