/** A few terms, each in a sentence or two. Trade words: common practice. */
export interface Term {
	readonly term: string;
	readonly meaning: string;
}

export const GLOSSARY: readonly Term[] = [
	{
		term: 'hybrid',
		meaning:
			'A socket with a three-pin half and a jack half behind one opening. It takes one plug at a time, and nothing inside joins the two halves.'
	},
	{
		term: 'tip, ring, sleeve',
		meaning:
			'The conductors of a phone plug from its nose: T, R and S. A plug without a ring is a TS plug, one with a ring a TRS plug.'
	},
	{
		term: 'spring',
		meaning: 'The sprung contact in a jack that a plug touches and lifts.'
	},
	{
		term: 'break contact, or normal',
		meaning:
			'A contact on which a spring rests while no plug is in: TN, RN, SN, and 1N for pin 1. It opens when its own spring lifts.'
	},
	{
		term: 'changeover',
		meaning: 'A contact C that stands on NC at rest and moves to NO when a plug is in.'
	},
	{
		term: 'bush',
		meaning:
			'The threaded collar of a jack. An insulated one keeps the sleeve off the panel, a metal one joins the two.'
	},
	{
		term: 'chassis lug',
		meaning:
			'The contact G, which meets the metal of the panel. It is not counted among a socket’s contacts.'
	},
	{
		term: 'chassis ground',
		meaning: 'The metal of enclosure and panel, bonded to protective earth in mains equipment.'
	},
	{
		term: 'signal ground',
		meaning: 'The zero-volt line of a circuit, joined to the chassis at one defined place.'
	},
	{
		term: 'protective earth',
		meaning: 'The safety conductor of the mains. Nobody lifts or switches it, for any hum.'
	},
	{
		term: 'shield',
		meaning: 'The screen of a cable, on pin 1 and on the sleeve.'
	},
	{
		term: 'hot and cold',
		meaning:
			'The two signal conductors of a balanced line: hot on pin 2 and the tip, cold on pin 3 and the ring.'
	},
	{
		term: 'jumper',
		meaning: 'A short wire soldered between two contacts.'
	},
	{
		term: 'core',
		meaning: 'One conductor of a cable. People count cores from one.'
	},
	{
		term: 'cup',
		meaning:
			'The hollow end of a contact into which a wire is soldered. With cable and jumper it holds two conductors.'
	},
	{
		term: 'net',
		meaning: 'All contacts that conductors make one. A resistance inside a device does not count.'
	},
	{
		term: 'polarity',
		meaning:
			'Which way up a signal arrives. With hot and cold exchanged it arrives reversed, at full level.'
	},
	{
		term: 'phantom power',
		meaning:
			'48 V that an input sends up both signal conductors to a microphone; the shield is its return.'
	},
	{
		term: 'over range',
		meaning: 'What the meter shows above 40 MΩ: nothing that it can find joins the probes.'
	},
	{
		term: 'clash',
		meaning: 'Two sources that reach one input at the same time.'
	}
];
