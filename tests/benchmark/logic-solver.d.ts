/** As much of logic-solver as the benchmark calls. */
declare module 'logic-solver' {
	type Formula = string | object;
	interface Solution {
		getTrueVars(): string[];
	}
	interface Solver {
		require(...formulas: Formula[]): void;
		forbid(...formulas: Formula[]): void;
		getVarNum(name: string): number;
		solve(): Solution | null;
		minimizeWeightedSum(start: Solution, costs: Formula[], weights: number | number[]): Solution;
	}
	const Logic: {
		Solver: new () => Solver;
		or(formulas: Formula[]): Formula;
		and(...formulas: Formula[]): Formula;
		not(formula: Formula): Formula;
		implies(a: Formula, b: Formula): Formula;
		equiv(a: Formula, b: Formula): Formula;
	};
	export default Logic;
}
