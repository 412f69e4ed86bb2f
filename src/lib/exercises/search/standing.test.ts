import { describe, expect, it } from 'vitest';
import { checkRequirements, contactsOf, matrixOf, pairsOf } from '../../engine';
import { benchOf } from '../../engine/bench.fixture';
import { randomNumbers } from '../../engine/random.fixture';
import { joinedBy } from './partition';
import { judgeOf } from './standing';
import { allChecks, plainStanding, readyFor } from './task';

/** Checks drawn for every plug state of a socket: some pairs joined, some apart, whether or not they can hold. */
function drawn(kind: string, below: (n: number) => number) {
	const devices = [{ id: 'D', kind: 'line-in' }];
	const cables = [{ id: 'c', awg: 24, m: 5, cores: [['A.S', 'D.shield'] as [string, string]] }];
	const bench = benchOf({
		sockets: [{ id: 'A', kind }],
		devices,
		cables: kind === 'hybrid-10' ? cables : []
	});
	const pairs = pairsOf([...contactsOf(bench, 'A'), 'D.hot', 'D.shield']);
	const require = Object.keys(matrixOf(bench, 'A')).map((state) => ({
		when: { A: state },
		joined: pairs.filter(() => below(40) === 0),
		apart: pairs.filter(() => below(90) === 0)
	}));
	const checked = checkRequirements({ require });
	if (!checked.ok) throw new Error(checked.problem.message);
	const task = { bench, mayWire: ['A'], require: checked.value };
	return readyFor(task, allChecks(task));
}

describe('how nodes stand with wires, in words of bits', () => {
	it.each(['hybrid-6', 'hybrid-9', 'hybrid-10', 'patch-jack', 'jack-ts-changeover'])(
		'is what plain union-find says: %s',
		(kind) => {
			const below = randomNumbers(7);
			let alive = 0;
			for (let turn = 0; turn < 60; turn++) {
				const ready = drawn(kind, below);
				const n = ready.contacts.length;
				const judge = judgeOf(ready);
				for (let k = 0; k < 12; k++) {
					const links = Array.from({ length: below(5) }, () => [below(n), below(n)] as const);
					const p = joinedBy(n, links);
					const standing = judge(p);
					expect(standing).toEqual(plainStanding(ready, p));
					if (!standing.dead && standing.cut) alive += 1;
				}
			}
			// Not only dead ends were compared.
			expect(alive).toBeGreaterThan(20);
		}
	);
});
