/**
 * Reads the two test runners' JSON reports and counts. A step that could not run, a file that
 * could not be loaded and a run in which nothing was tested are failures, never silence.
 */

/**
 * @typedef {{ passed: number, failed: number, skipped: number }} Count
 */

/**
 * What a step counts that is one test by itself: types, lint, build.
 * @param {boolean} ok
 * @returns {Count}
 */
export const single = (ok) => ({ passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 });

/**
 * A count is believed only if something was tested and the runner agrees with it.
 * @param {Count} count
 * @param {boolean} ok whether the runner ended well
 * @returns {Count}
 */
function checked(count, ok) {
	const isEmpty = count.passed + count.failed === 0;
	const isHidden = !ok && count.failed === 0;
	return isEmpty || isHidden ? { ...count, failed: count.failed + 1 } : count;
}

/**
 * @param {any} report vitest's JSON report, or null if there is none
 * @param {boolean} ok whether vitest ended well
 * @returns {Count}
 */
export function vitestCount(report, ok) {
	if (!report) return single(false);
	/** @type {any[]} */
	const files = report.testResults ?? [];
	const broken = files.filter((file) => file.status === 'failed' && !hasFailure(file)).length;
	const count = {
		passed: report.numPassedTests ?? 0,
		failed: (report.numFailedTests ?? 0) + broken,
		skipped: (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0)
	};
	return checked(count, ok);
}

/** @param {any} file */
const hasFailure = (file) =>
	(file.assertionResults ?? []).some(
		/** @param {any} result */ (result) => result.status === 'failed'
	);

/**
 * @param {any} report Playwright's JSON report, or null if there is none
 * @param {boolean} ok whether Playwright ended well
 * @returns {Count}
 */
export function playwrightCount(report, ok) {
	if (!report) return single(false);
	const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = report.stats ?? {};
	const errors = (report.errors ?? []).length;
	return checked({ passed: expected, failed: unexpected + flaky + errors, skipped }, ok);
}

/**
 * @param {Count[]} counts
 * @returns {Count}
 */
export function total(counts) {
	return counts.reduce(
		(sum, count) => ({
			passed: sum.passed + count.passed,
			failed: sum.failed + count.failed,
			skipped: sum.skipped + count.skipped
		}),
		{ passed: 0, failed: 0, skipped: 0 }
	);
}
