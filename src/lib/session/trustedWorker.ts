/**
 * A worker of our own. Under Trusted Types an address of a script must come from a policy; this one lets
 * through what the build itself made, and nothing else is ever given to it.
 */
interface Policy {
	createScriptURL(address: string): unknown;
}
interface TrustedTypes {
	createPolicy(name: string, rules: { createScriptURL(address: string): string }): Policy;
}

let policy: Policy | null = null;

/** Starts the module at an address that the build made (`?worker&url`). Throws where there are no workers. */
export function startWorker(address: string): Worker {
	const types = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes;
	policy ??= types?.createPolicy('solderside-worker', { createScriptURL: (own) => own }) ?? null;
	const script = (policy?.createScriptURL(address) ?? address) as string;
	return new Worker(script, { type: 'module' });
}
