/** The set-up text of an exercise as a small tree of our own, which can hold nothing that executes. */
export type Inline =
	| { readonly kind: 'text'; readonly text: string }
	| { readonly kind: 'code'; readonly text: string }
	| { readonly kind: 'strong' | 'em'; readonly inline: readonly Inline[] };
export type Block =
	| { readonly kind: 'paragraph'; readonly inline: readonly Inline[] }
	| {
			readonly kind: 'list';
			readonly ordered: boolean;
			readonly items: readonly (readonly Block[])[];
	  }
	| { readonly kind: 'code'; readonly text: string };
